import type { Attributes, ComponentType, VNode } from 'preact'
import { h, hydrate, render } from 'preact'

/** The private name under which Preact looks for what an island's ids begin with; @astrojs/preact sets it on the server. */
interface Masked {
  __m?: readonly [island: number, id: number]
}

/** What a page brings in a slot of an island stays as it came: it is one and the same node at each rendering. */
const slot = (html: string, name?: string): VNode =>
  h('astro-slot', { name, dangerouslySetInnerHTML: { __html: html } } as Attributes)

/**
 * An island within another comes when that is at work, and may have to show something else than the server did: what
 * stands there is kept, and made to agree. What the reader has unfolded stays unfolded.
 */
function takeOver(child: VNode, element: HTMLElement): void {
  const unfolded = [...element.querySelectorAll('details[open]')]
  render(child, element)
  for (const fold of unfolded) fold.toggleAttribute('open', true)
}

/**
 * Puts an island to work on what the server rendered: what @astrojs/preact does, without what no page here uses
 * (signals as props, islands without a picture from the server, islands that leave before their page).
 */
const wakeIsland =
  (element: HTMLElement) =>
  (
    Component: ComponentType,
    props: Record<string, unknown>,
    { default: children, ...slots }: Readonly<Record<string, string>>,
  ): void => {
    for (const [name, html] of Object.entries(slots)) props[name] = slot(html, name)
    const child: VNode & Masked = h(Component, props, children === undefined ? undefined : slot(children))
    child.__m = [Number(element.dataset.preactIslandId), 0]
    if (element.parentElement?.closest('astro-island')) takeOver(child, element)
    else hydrate(child, element)
  }

// biome-ignore lint/style/noDefaultExport: Astro takes a renderer from there
export default wakeIsland
