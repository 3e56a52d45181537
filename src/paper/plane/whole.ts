/** The last whole number at which something holds, between one at which it does and one at which it does not. */
export function lastWhole(holds: (k: number) => boolean, good: number, bad: number): number {
  let [yes, no] = [good, bad]
  while (Math.abs(no - yes) > 1) {
    const middle = Math.trunc((yes + no) / 2)
    if (holds(middle)) yes = middle
    else no = middle
  }
  return yes
}
