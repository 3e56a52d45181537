import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/keys.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { KEYS } from '../model/keys.ts'
import { Slip } from './Slip.tsx'

/** Every key of the page and what it does. */
export const KeysSlip = ({ dummy }: { readonly dummy: Dummy }): JSX.Element => (
  <Slip dummy={dummy} title={says.title}>
    <dl class="keys">
      {KEYS.map(({ keys, does }) => (
        <div key={keys}>
          <dt>{keys}</dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  </Slip>
)
