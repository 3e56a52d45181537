/** What a lesson's page does by itself, before anything on it wakes: ready templates, and the class's place. */
import * as says from '../../content/words/site/at-hand.ts'
import { fetched, notLoaded } from '../widgets/model/loading.ts'
import { save } from '../widgets/template/save.ts'
import { KEY } from './key.ts'

// The page stays, and says so if the file does not come: a browser alone would say nothing.
for (const link of document.querySelectorAll<HTMLAnchorElement>('.templates a[download]')) {
  const said = link.closest('.templates')?.querySelector('.template-says')
  link.addEventListener('click', async (event) => {
    event.preventDefault()
    const name = link.href.slice(link.href.lastIndexOf('/') + 1)
    try {
      // That the chapter's own was taken.
      localStorage.setItem(`${KEY}printed.${link.dataset.prints}`, '')
    } catch {
      // Storage may be forbidden: then it is not remembered.
    }
    try {
      save([await (await fetched(link.href)).blob()], 'application/pdf', name)
      if (said) said.textContent = says.saved(name)
    } catch (error) {
      if (said) said.textContent = notLoaded(says.theTemplate, error)
    }
  })
}

const wake = async (): Promise<void> => {
  if (document.documentElement.dataset.projector !== 'on') return
  const place = document.querySelector<HTMLElement>('.class-place')
  removeEventListener('resize', wake)
  const { mount } = await import('../widgets/projector/mount.tsx')
  if (place) mount(place)
}

// The switch tells of itself so.
addEventListener('resize', wake)
void wake()
