import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import { cautionRules } from '../../../../src-main/engine/cautions/caution-list.ts'
import type { CautionRule } from '../../../../src-main/engine/cautions/caution-rule.ts'
import { cautionsFor } from '../../../../src-main/engine/cautions/cautions-for.ts'
import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import { liftUse } from '../labour/lifts-for-tests.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { typical } from '../../../typical-asks.ts'

const delivered = defaultFigures('2026-11-25')
const figures: Figures = {
  ...delivered,
  settings: {
    ...delivered.settings,
    'asbestos.beforeYear': { says: 'Limit', value: 2000, unit: 'Year', source: 'the firm' },
    'lift.touchHotC': { says: 'Hot to touch', value: 43, unit: 'C', source: 'the firm' },
  },
}
const setting = (id: string) => named(figures, [id]).why(id)
const all = cautionRules as readonly CautionRule[]
const reasonOf = (id: string, over: object) => {
  const rule = all.find((one) => one.id === id)
  if (rule === undefined) throw new Error(`There is no caution ${id}`)
  return rule.when({ ...typical[rule.per], ...over }, named(figures, rule.uses))
}

const rows: readonly (readonly [id: string, over: object, because: Derivation | null])[] = [
  [
    'asbestos',
    { builtYear: 1999 },
    because('Built before the limit.', 1999, {
      from: [given('Year built', 1999, undefined, 'survey'), setting('asbestos.beforeYear')],
    }),
  ],
  ['asbestos', { builtYear: 2000 }, null],
  [
    'asbestos',
    { builtYear: null },
    given('The year of building is not known', 'unknown', undefined, 'survey'),
  ],
  [
    'bathroom-zones',
    { roomUse: 'bathroom', roomName: 'En suite' },
    given('The room', 'En suite', undefined, 'survey'),
  ],
  ['bathroom-zones', {}, null],
  ['chemicals', { drainedShare: 0.25 }, given('Water let out, as a share of the system', 0.25)],
  ['element-electrician', { elementW: 400 }, given('Element', 400, 'W', 'survey')],
  ['element-electrician', {}, null],
  ['filling-loop', {}, given('The system is sealed', 'sealed', undefined, 'survey')],
  ['filling-loop', { systemKind: 'openVented' }, null],
  [
    'frail-people',
    { frailOrChildren: true },
    given('Children or frail people live here', 'yes', undefined, 'survey'),
  ],
  ['frail-people', {}, null],
  ['gas-appliance', { swaps: 3 }, given('Emitters on the system', 3)],
  ['hidden-services', { holeId: 'B2', drillMm: 10 }, given('Hole B2 is drilled', 10, 'mm')],
  [
    'hot-surface',
    { emitterKind: 'towelRail', flowC: 43 },
    because('A rail within reach runs hotter than the limit.', 43, {
      unit: 'C',
      from: [given('Flow temperature', 43, 'C', 'survey'), setting('lift.touchHotC')],
    }),
  ],
  ['hot-surface', { emitterKind: 'towelRail', flowC: 42.9 }, null],
  ['hot-surface', { emitterKind: 'column', flowC: 60 }, null],
  ['hot-work', { hotWork: true }, given('Soldering is planned', 'yes', undefined, 'survey')],
  ['hot-work', {}, null],
  ['pressure-test', { swaps: 3 }, given('Emitters to test', 3)],
  ['system-hot', { swaps: 3 }, given('Emitters to take off or fit', 3)],
  ['tile-dust', { wallFinish: 'tile' }, given('The wall is tiled', 'tile', undefined, 'survey')],
  ['tile-dust', {}, null],
  ['two-person-lift', { emitterMassKg: 18 }, null],
  ['two-person-lift', { emitterMassKg: 18, oldMassKg: 18 }, null],
]

describe('what brings each caution up', () => {
  it.each(rows)('%s with %j', (id, over, why) => {
    expect(reasonOf(id, over)).toEqual(why)
  })

  it('a lift is told by the heaviest thing, new or old, and by what one person may lift of each', () => {
    const heavyOld = reasonOf('two-person-lift', { roomName: 'Study', emitterMassKg: 18, oldMassKg: 31 })
    expect(heavyOld).toMatchObject({
      says: 'An emitter in the Study is over what one person should lift there.',
      value: 31,
      unit: 'kg',
    })
    expect(heavyOld?.from.map(({ from }) => from[0])).toEqual([
      given('Mass, dry', 18, 'kg'),
      given('Mass, dry', 18, 'kg'),
      given('Mass, dry', 31, 'kg'),
    ])
    const heavyNew = reasonOf('two-person-lift', { emitterMassKg: 38 })
    expect(heavyNew).toMatchObject({ value: 38, unit: 'kg' })
    expect(heavyNew?.from.at(-1)).toEqual(given('Mass of the old emitter', 'not known', undefined, 'survey'))
  })

  it('an old one that is light on the flat is heavy on stairs', () => {
    const limit = liftUse().value('lift.onePersonKg')
    expect(reasonOf('two-person-lift', { emitterMassKg: 1, oldMassKg: limit })).toBeNull()
    expect(reasonOf('two-person-lift', { emitterMassKg: 1, oldMassKg: limit, storey: 1 })).not.toBeNull()
  })

  it('every caution stands in a row above', () => {
    const seen = new Set(rows.map(([id]) => id))
    expect(all.map(({ id }) => id).filter((id) => !seen.has(id))).toEqual([])
  })
})

describe('the cautions of a job', () => {
  const cautions = () =>
    cautionsFor(
      factsOf([
        swapOf('a', 'bath', {
          holes: [
            { ...typical.hole, wallFinish: 'tile' },
            { ...typical.hole, holeId: 'A2' },
          ],
        }),
      ]),
      figures,
    )
  const told = (id: string) => cautions().find(({ cautionId }) => cautionId === id)

  it('are those that something calls for, in the order of the list', () => {
    expect(cautions().map(({ cautionId }) => cautionId)).toEqual([
      'asbestos',
      'chemicals',
      'filling-loop',
      'gas-appliance',
      'hidden-services',
      'pressure-test',
      'system-hot',
      'tile-dust',
    ])
  })
  it('with one reason show that reason', () => {
    expect(told('tile-dust')).toEqual({
      cautionId: 'tile-dust',
      says: all.find(({ id }) => id === 'tile-dust')?.says,
      because: given('The wall is tiled', 'tile', undefined, 'survey'),
    })
  })
  it('with two show both, how many there are, and where the caution comes from', () => {
    expect(told('hidden-services')?.because).toEqual(
      because('2 places call for it.', 2, {
        from: [given('Hole A1 is drilled', 8, 'mm'), given('Hole A2 is drilled', 8, 'mm')],
        source: 'BS 7671 522.6 for where cables may run',
      }),
    )
  })
})
