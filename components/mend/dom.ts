type Child = Node | string | null

/** An element with its attributes and what it holds; text goes in as text. */
export function el<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string | number | boolean>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name)
  for (const [key, value] of Object.entries(attributes)) {
    if (value === true) made.setAttribute(key, '')
    else if (value !== false) made.setAttribute(key, String(value))
  }
  made.append(...children.filter((child) => child !== null))
  return made
}

export function find<T extends Element = HTMLElement>(root: ParentNode, selector: string): T {
  const found = root.querySelector<T>(selector)
  if (!found) throw new Error(`the page has no ${selector}`)
  return found
}
