/**
 * Components that belong together mark themselves with comments, `<!--step-->…<!--/step-->`; the cell that
 * holds them wraps each run of neighbours. `wrap` gets the run without its marks, how many it holds, and how
 * many came before.
 */
export function gather(
  html: string,
  mark: string,
  wrap: (run: string, count: number, before: number) => string,
): string {
  const open = `<!--${mark}-->`
  const close = `<!--/${mark}-->`
  let before = 0
  return html.replace(new RegExp(`(?:${open}[\\s\\S]*?${close}\\s*)+`, 'g'), (run) => {
    const count = run.split(open).length - 1
    const wrapped = wrap(run.replaceAll(open, '').replaceAll(close, ''), count, before)
    before += count
    return wrapped
  })
}

/** The same with one more right before the last of those; unchanged where there is none. */
export function beforeLast(html: string, mark: string, more: string): string {
  const at = html.lastIndexOf(`<!--${mark}-->`)
  return at < 0 ? html : html.slice(0, at) + more + html.slice(at)
}
