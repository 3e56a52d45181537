import type { ClientDirective } from 'astro'

const isOn = (): boolean => document.documentElement.dataset.projector === 'on'

/** `client:projector`: an island wakes when the page is on a projector, now or once its switch is pressed. */
const projector: ClientDirective = (load) => {
  const wake = async () => {
    if (!isOn()) return
    removeEventListener('resize', wake)
    const hydrate = await load()
    await hydrate()
  }
  // The switch tells of itself so.
  addEventListener('resize', wake)
  void wake()
}

// biome-ignore lint/style/noDefaultExport: Astro takes a directive from there
export default projector
