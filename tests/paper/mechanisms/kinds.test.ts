// What a kind says of itself must be so: one test each, over all kinds.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { read } from '../../../src/paper/design/change.ts'
import type { Mechanism } from '../../../src/paper/index.ts'
import {
  change,
  kindNamed,
  kindOf,
  measure,
  modelOf,
  pieces,
  ridgeOf,
  settingOf,
} from '../../../src/paper/index.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { allKinds, entryOf } from '../shared/kinds.ts'
import { mirrored } from '../shared/twins.ts'

describe.each(allKinds)('%s', (name) => {
  const kind = kindNamed(name)
  if (!kind) throw new Error(`no kind is called ${name}`)
  const made = gluedDesigns({ kinds: [name], most: 1 })
  const each = (check: (m: Mechanism, design: Parameters<typeof modelOf>[0]) => void) =>
    fc.assert(
      fc.property(made, (design) => check(design.mechanisms[0] as Mechanism, design)),
      { numRuns: 60 },
    )

  test('is cut from its host, or a card of its own, as it says', () => {
    each((m, design) => {
      const build = kind.build(m)
      const own = pieces(design).slice(1)
      if (kind.stock.from === 'host') {
        expect(own).toEqual([])
        expect(build.notch).not.toBeNull()
      } else {
        expect(own.length).toBeGreaterThan(0)
        expect(build.notch).toBeNull()
        expect(build.cuts).toEqual({ left: [], right: [] })
        expect(build.glue?.length).toBeGreaterThan(0)
      }
    })
  })

  test('is held while it dries as it says', () => {
    if (kind.stock.from === 'host') return
    const { held } = kind.stock
    each((m, design) => {
      const { creases, panels, pieces: flat } = modelOf(design)
      expect(kind.sitsOn === 'panel').toBe(held === 'face')
      if (held === 'joints') {
        // One piece that folds over at its ridge, which lies along x = 0, and a joint on either page.
        expect(flat.length).toBe(2)
        const ridge = creases.find((crease) => crease.name === ridgeOf(design, m.id))
        const ways = [ridge?.left, ridge?.right].map((lay) => panels[lay?.panel ?? -1]?.onPiece)
        for (const lay of ways) {
          expect(lay?.origin[0]).toBe(0)
          expect(lay?.run[0]).toBe(0)
        }
        const hosts = creases.filter(({ owner }) => owner === 0).flatMap(({ left, right }) => [left, right])
        expect(hosts.map(({ panel }) => panel)).toEqual(expect.arrayContaining([0, 1]))
      }
      if (held === 'walls') expect(flat.length).toBeGreaterThan(2)
      if (held === 'face') expect(modelOf(design).builds[0]?.hostPanel).toBeDefined()
    })
  })

  test('its twins are one another’s, and change places in a mirror', () => {
    for (const { name: field, twin } of kind.fields) {
      if (twin === undefined) continue
      expect(kind.fields.find((one) => one.name === twin)?.twin).toBe(field)
      each((m, design) => {
        const other = mirrored(design).mechanisms[0] as Mechanism
        expect(settingOf(other, field)).toBe(settingOf(m, twin))
      })
    }
  })

  test('a number that moves nothing moves nothing', () => {
    for (const { name: field } of kind.fields.filter(({ idle }) => idle))
      each((m, design) => {
        const other = change(design, m.id, { [field]: settingOf(m, field) + 3 })
        expect(measure(other, 70)).toEqual(measure(design, 70))
      })
  })

  test('sets both its states', () => {
    const { pops } = kind
    if (!pops) return
    each((m, design) => {
      const folds = [pops.up, pops.down].map((state) => {
        for (const [field, value] of Object.entries(state)) {
          expect(kind.choices?.find((choice) => choice.name === field)?.values).toContain(value)
          expect(read(change(design, m.id, state).mechanisms[0] as Mechanism, field)).toBe(value)
        }
        const set = change(design, m.id, state)
        return modelOf(set).creases.find((crease) => crease.name === ridgeOf(set, m.id))?.fold
      })
      // Popped, its ridge stands towards the reader.
      expect(folds).toEqual(['mountain', 'valley'])
    })
  })

  test('an angle shown as an arc is the one between its crease and the host’s, as a protractor reads it', () => {
    for (const angle of kind.derived.filter(({ arc }) => arc !== undefined))
      each((m) => {
        const crease = kindOf(m)
          .build(m)
          .creases.find(({ part }) => part === angle.arc)
        const lay = [crease?.left, crease?.right].find((hang) => hang?.panel.startsWith('host-'))?.lay
        const [across, along] = lay?.run ?? [Number.NaN, Number.NaN]
        const read = (Math.atan2(across, Math.abs(along)) * 180) / Math.PI
        expect(Math.abs(angle.get(m))).toBeCloseTo(read, 9)
      })
  })

  test('a handle moves numbers that it has', () => {
    const numbers = [...kind.fields, ...kind.derived].map((one) => one.name)
    for (const { across, along } of kind.handles)
      for (const one of [across, along]) if (one !== undefined) expect(numbers).toContain(one)
  })

  test('has an entry among the tests that grows what a file may hold', () => {
    each((m) => {
      expect(kind.limits?.(m) ?? null).toBeNull()
      expect(kind.complete(m)).toEqual(m)
      expect(entryOf(name).mirrored(entryOf(name).mirrored(m))).toEqual(m)
    })
  })
})
