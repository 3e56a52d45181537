import type { JSX } from 'preact'
import * as says from '../../../content/words/wall.ts'
import type { AtWall, KeyTold } from './at-wall.ts'
import { keysFor } from './at-wall.ts'

const List = ({ name, keys }: { readonly name: string; readonly keys: readonly KeyTold[] }): JSX.Element => (
  <div>
    <h2>{name}</h2>
    <dl>
      {keys.map(({ key, says: does }) => (
        <div key={key}>
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  </div>
)

/** What each key does here: a clicker's keys are the page's, letters are the tools'. */
export function Keys({ at }: { readonly at: AtWall }): JSX.Element {
  const { page, tools } = keysFor(at)
  return (
    <section class="wall-slip wall-keys" aria-label={says.keys}>
      <List name={says.keysOfPage} keys={page} />
      <List name={says.keysOfTools} keys={tools} />
    </section>
  )
}
