// How long verdicts take on crowded cards, with and without faults, and after one change; and repairs. Printed, not judged.
import type { Design } from '../../src/paper/index.ts'
import { change, check, settable, settingOf } from '../../src/paper/index.ts'
import { crowds } from '../paper/shared/crowds.ts'

const COUNTS = [5, 25, 100, 200]

/** A number of times each, the middle one told. */
const TIMES = 5

function median(run: () => void): string {
  const times = Array.from({ length: TIMES }, () => {
    const begun = performance.now()
    run()
    return performance.now() - begun
  }).sort((a, b) => a - b)
  return (times[Math.floor(TIMES / 2)] ?? Number.NaN).toFixed(0).padStart(7)
}

/** A design that nothing is known of yet. */
const fresh = (design: Design): Design => structuredClone(design)

/** The design with one number of its middle mechanism moved by a tenth. */
function moved(design: Design): Design {
  const m = design.mechanisms[Math.floor(design.mechanisms.length / 2)]
  const field = m && settable(m)[0]
  return m && field ? change(design, m.id, { [field.name]: settingOf(m, field.name) + 0.1 }) : design
}

console.log(
  `Verdicts, ms, median of ${TIMES}; 50 ms wanted for 25 mechanisms, 2000 for 200, 1500 with repairs`,
)

for (const [name, make] of crowds) {
  console.log(`\n${name}`)
  for (const count of COUNTS) {
    const design = make(count)
    const verdicts = median(() => check(fresh(design), { repairs: false }))
    const again = median(() => check(moved(design), { repairs: false }))
    const repairs = count > 25 ? '' : `   with repairs ${median(() => check(fresh(design)))}`
    console.log(`${String(count).padStart(5)} mechanisms ${verdicts}   after one change ${again}${repairs}`)
  }
}
