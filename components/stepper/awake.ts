/** How the screen is kept from going dark, as far as this browser can. */
export interface Awake {
  keep(): void
  letGo(): void
}

const words = {
  kept: 'The screen stays awake.',
  lost: 'The screen may go dark: the machine did not let it be kept awake.',
  unknown: 'This browser cannot keep the screen awake. Set the machine not to sleep.',
} as const

/** `tell` is given what is true at each moment; nothing once it is let go. */
export function awakeOn(tell: (words: string) => void): Awake {
  let lock: WakeLockSentinel | null = null
  let wanted = false
  const ask = async (): Promise<void> => {
    if (!('wakeLock' in navigator)) return tell(words.unknown)
    try {
      const given = await navigator.wakeLock.request('screen')
      if (!wanted) return void given.release()
      lock = given
      lock.addEventListener('release', () => wanted && tell(words.lost))
      tell(words.kept)
    } catch {
      tell(words.lost)
    }
  }
  // A page that was out of sight has lost its screen and must ask again.
  document.addEventListener('visibilitychange', () => {
    if (wanted && document.visibilityState === 'visible') ask()
  })
  return {
    keep() {
      wanted = true
      ask()
    },
    letGo() {
      wanted = false
      lock?.release()
      lock = null
      tell('')
    },
  }
}
