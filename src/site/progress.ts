/** Where the reader is on the path: what this device remembers of the chapters, shown beside each. */
import * as says from '../../content/words/site/path.ts'
import { KEY } from './key.ts'

/** Runs in a chapter: remembers that it was the last one opened. */
export const keepPlace = (slug: string): string =>
  `try { localStorage.setItem('${KEY}last', ${JSON.stringify(slug)}) } catch {}`

const [HERE, BEGUN, MET] = [says.youAreHere, says.begun, says.challengesMet('{met}', '{goals}')].map((said) =>
  JSON.stringify(said),
)

/** Runs behind the path: says which chapter was open last, and which challenges are met. */
export const SHOW_PLACE = `(() => {
  try {
    const names = Object.keys(localStorage)
    const last = localStorage.getItem('${KEY}last')
    for (const stop of document.querySelectorAll('[data-stop]')) {
      const { stop: slug, goals } = stop.dataset
      const met = names.filter((name) => name.startsWith('${KEY}goal.' + slug + '.')).length
      const guessed = names.includes('${KEY}guess.' + slug)
      const says = [
        slug === last ? ${HERE} : '',
        met > 0 ? ${MET}.replace('{met}', Math.min(met, goals)).replace('{goals}', goals) : guessed ? ${BEGUN} : '',
      ].filter(Boolean)
      const place = stop.querySelector('[data-place-says]')
      if (!place || says.length === 0) continue
      place.textContent = says.join(' ')
      place.hidden = false
      if (slug === last) stop.dataset.here = ''
      if (met >= Number(goals)) stop.dataset.whole = ''
    }
  } catch {}
})()`
