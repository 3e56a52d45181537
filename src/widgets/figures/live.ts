import type { SvgNode } from '../../drawing/pen/nodes.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** An element of the page and the node that it shows. */
interface Live {
  node: SvgNode
  readonly element: Element
  kids: Live[]
}

function made(node: SvgNode): Live {
  const element = document.createElementNS(SVG, node.kind.tag)
  const { kind, values, inner } = node
  values.forEach((value, k) => {
    if (value !== undefined) element.setAttribute(kind.names[k] as string, value)
  })
  const kids = typeof inner === 'string' ? [] : inner.map(made)
  element.append(...(typeof inner === 'string' ? [inner] : kids.map((kid) => kid.element)))
  return { node, element, kids }
}

const follows = (was: SvgNode, now: SvgNode): boolean =>
  was.kind === now.kind && typeof was.inner === typeof now.inner

function renew(live: Live, node: SvgNode): void {
  const was = live.node
  if (was === node) return
  live.node = node
  const { element } = live
  const { names } = node.kind
  for (let k = 0; k < names.length; k++) {
    const value = node.values[k]
    if (value === was.values[k]) continue
    if (value === undefined) element.removeAttribute(names[k] as string)
    else element.setAttribute(names[k] as string, value)
  }
  if (node.inner === was.inner) return
  // The same text node: a new one would let the browser ask anew of the whole page what holds what (`:has`).
  if (typeof node.inner === 'string') (element.firstChild ?? element).textContent = node.inner
  else live.kids = renewed(element, live.kids, node.inner)
}

/** Brings what is in an element up to date. What changes places is moved; elements are made only for what is new. */
function renewed(parent: Element, before: readonly Live[], nodes: readonly SvgNode[]): Live[] {
  const keyed = new Map<string, Live>()
  const rest: Live[] = []
  for (const live of before) {
    const { key } = live.node
    if (key === undefined) rest.push(live)
    else keyed.set(key, live)
  }
  let next = 0
  let at: Element | null = before[0]?.element ?? null
  const now: Live[] = []
  for (const node of nodes) {
    let live = node.key === undefined ? rest[next] : keyed.get(node.key)
    if (live && follows(live.node, node)) {
      if (node.key === undefined) next++
      else keyed.delete(node.key)
      renew(live, node)
    } else live = made(node)
    now.push(live)
    const { element } = live
    // One that has gone elsewhere is passed over: it is put where it belongs when its turn comes.
    if (at !== element && at?.nextElementSibling === element) at = element
    if (at === element) at = element.nextElementSibling
    else parent.insertBefore(element, at)
  }
  for (const live of keyed.values()) live.element.remove()
  for (; next < rest.length; next++) rest[next]?.element.remove()
  return now
}

/** A picture in the page. The first time all that is in it is made anew; then only what has changed is touched. */
export function livePicture(picture: Element): (nodes: readonly SvgNode[]) => void {
  let kids: Live[] | null = null
  return (nodes) => {
    if (kids) {
      kids = renewed(picture, kids, nodes)
      return
    }
    kids = nodes.map(made)
    picture.replaceChildren(...kids.map(({ element }) => element))
  }
}
