/**
 * A list to choose from. What is picked by pointer counts at once. Keys walk through the choices one by one, and the
 * lesson must not run along with them: there Enter says that the choice is made, and leaving the list takes it back.
 */
export function onChoice(
  list: HTMLSelectElement,
  choose: (value: number) => void,
  shown: () => number,
): void {
  const hint = list.parentElement?.querySelector<HTMLElement>('[data-hint]')
  let byKey = false
  const wait = (waits: boolean): void => {
    byKey &&= waits
    if (hint) hint.hidden = !waits
  }
  const isWaiting = (): boolean => Number(list.value) !== shown()
  list.addEventListener('pointerdown', () => {
    byKey = false
  })
  list.addEventListener('keydown', ({ key }) => {
    byKey = true
    if (key !== 'Enter' || !isWaiting()) return
    wait(false)
    choose(Number(list.value))
  })
  list.addEventListener('change', () => {
    if (byKey) wait(isWaiting())
    else choose(Number(list.value))
  })
  list.addEventListener('blur', () => {
    wait(false)
    list.value = String(shown())
  })
}
