/** Fetches what moves the pictures when a reader comes near one: until then they stand as they were drawn. */
const observer = new IntersectionObserver(
  (entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting || !(target instanceof HTMLElement)) continue
      observer.unobserve(target)
      import('./fabric-view.ts').then(({ start }) => start(target))
    }
  },
  { rootMargin: '100%' },
)

for (const root of document.querySelectorAll<HTMLElement>('[data-fabric]')) observer.observe(root)
