import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Boxed } from '../../../../src-main/domain/item.ts'
import { askedFor, useBoxes } from '../../../../src-main/engine/takeoff/gather-needs.ts'
import type { JobNeed } from '../../../../src-main/engine/takeoff/gather-needs.ts'
import { rules } from '../../../../src-main/engine/takeoff/rule-list.ts'
import { need } from '../../../../src-main/engine/takeoff/rule.ts'
import type { AnyRule } from '../../../../src-main/engine/takeoff/rule.ts'
import { needInWords } from '../../../../src-main/engine/takeoff/resolve.ts'
import { takeOff } from '../../../../src-main/engine/takeoff/take-off.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { typical } from '../../../typical-asks.ts'
import { factsOf, swapOf } from './facts-for-tests.ts'
import { shelfWith } from './parts-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const spec = { bitMm: 8, lengthMm: 50 }
const plugs = (quantity: number, more: Partial<JobNeed> = {}): JobNeed => ({
  kind: 'plug',
  spec,
  quantity,
  unit: 'each',
  shared: false,
  swapIds: ['a'],
  why: given('Plugs.', quantity, 'each'),
  ...more,
})
const boxed = (count: number, more: Partial<Boxed> = {}): Boxed => ({ kind: 'plug', spec, count, ...more })
/** A solid wall, and what is in the box. */
const from = (needs: readonly JobNeed[], ...box: readonly Boxed[]) =>
  useBoxes(needs, factsOf([swapOf('a', 'hall', { box })]))

describe("what is in an emitter's box", () => {
  it('is taken before anything is bought: five of eight, and three stay', () => {
    const { remaining, used } = from([plugs(8)], boxed(5))
    expect(used).toEqual([
      {
        kind: 'plug',
        spec,
        quantity: 5,
        swapId: 'a',
        why: because("In the emitter's box, and it suits this wall: Plugs.", 5, {
          from: [given('Plugs.', 8, 'each')],
        }),
      },
    ])
    expect(remaining).toEqual([
      plugs(3, {
        why: because('Plugs.', 3, {
          unit: 'each',
          from: [given('Plugs.', 8, 'each'), given("Taken from the emitter's box", 5)],
        }),
      }),
    ])
  })

  it('meets a need whole, to the last piece', () => {
    expect(from([plugs(5)], boxed(5)).remaining).toEqual([])
    expect(from([plugs(6)], boxed(5)).remaining.map(({ quantity }) => quantity)).toEqual([1])
    expect(from([plugs(4)], boxed(5)).used.map(({ quantity }) => quantity)).toEqual([4])
  })

  it('is used up: three for the first need, two for the next', () => {
    const { remaining, used } = from([plugs(3), plugs(4)], boxed(5))
    expect(used.map(({ quantity }) => quantity)).toEqual([3, 2])
    expect(remaining.map(({ quantity }) => quantity)).toEqual([2])
  })

  it('may lie in two bags, and the second is opened for what the first lacks', () => {
    expect(from([plugs(3)], boxed(2), boxed(2)).used.map(({ quantity }) => quantity)).toEqual([2, 1])
    expect(from([plugs(2)], boxed(2), boxed(2)).used.map(({ quantity }) => quantity)).toEqual([2])
    expect(from([plugs(2)], boxed(0), boxed(2)).used.map(({ quantity }) => quantity)).toEqual([2])
  })

  it('is left where it does not suit the wall, and the need is as it was', () => {
    const asked = plugs(3)
    const { remaining, used } = from([asked], boxed(5, { suits: ['aeratedBlock'] }))
    expect([remaining, used]).toEqual([[asked], []])
    expect(remaining[0]?.why).toBe(asked.why)
    const suits = ['aeratedBlock', 'solidMasonry'] as const
    expect(from([asked], boxed(5, { suits })).remaining).toEqual([])
  })

  it('is left where it is another kind or another size', () => {
    expect(from([plugs(3)], boxed(5, { kind: 'screw' })).used).toEqual([])
    expect(from([plugs(3)], boxed(5, { spec: { ...spec, bitMm: 10 } })).used).toEqual([])
  })

  it('is not for another swap, for the whole job, or in place of an emitter', () => {
    const others = [
      plugs(1, { swapIds: ['b'] }),
      plugs(1, { swapIds: ['a', 'b'] }),
      plugs(1, { swapIds: [] }),
      plugs(1, { kind: 'emitter' }),
    ]
    expect(from(others, boxed(5))).toEqual({ remaining: others, used: [] })
  })
})

describe('what the rules ask for', () => {
  const rule = (source?: string): AnyRule => ({
    id: 'test',
    per: 'swap',
    source: 'a leaflet',
    says: 'A test',
    uses: [],
    gives: (swap) => {
      const asked = need('vent', {}, 2, { says: `For ${swap.emitterName}.` })
      return [source === undefined ? asked : { ...asked, why: { ...asked.why, source } }]
    },
    examples: [],
  })

  it('carries the source of its rule, unless the reason has one of its own', () => {
    const facts = factsOf([swapOf('a', 'hall'), swapOf('b', 'hall')])
    const [first, second] = askedFor([rule()], facts, figures)
    expect(first).toEqual({
      kind: 'vent',
      spec: {},
      quantity: 2,
      unit: 'each',
      shared: false,
      swapIds: ['a'],
      why: because('For Panel.', 2, { unit: 'each', from: [], source: 'a leaflet' }),
    })
    expect(second?.swapIds).toEqual(['b'])
    expect(askedFor([rule('a standard')], facts, figures)[0]?.why.source).toBe('a standard')
  })

  it('is counted in the unit of its kind, with pieces where it has some', () => {
    const pieces = [{ id: 'run', lengthMm: 900, count: 1 }]
    expect(need('pipe', {}, 0.9, { says: 'A run.', pieces })).toMatchObject({ unit: 'm', pieces })
    expect(need('emitter', {}, 1, { says: 'One.' })).toMatchObject({ unit: 'each' })
    expect(need('vent', {}, 1, { says: 'One.' })).not.toHaveProperty('pieces')
  })
})

describe('the parts list', () => {
  const shelf = shelfWith([], [])
  const holes = ['A1', 'A2'].map((holeId) => ({ ...typical.hole, holeId }))
  const list = (...swapIds: readonly string[]) =>
    takeOff(factsOf(swapIds.map((id) => swapOf(id, 'hall', { holes, box: [boxed(3)] }))), shelf, figures)

  it('says how many rules were asked about how many swaps, with the reason of each line', () => {
    const one = list('a').takeOff
    expect(one.why).toEqual(
      because(`${rules.length} rules were asked about 1 swap.`, one.lines.length, {
        unit: 'lines',
        from: one.lines.map(({ why }) => why),
      }),
    )
    expect(list('a', 'b').takeOff.why.says).toBe(`${rules.length} rules were asked about 2 swaps.`)
    expect(list().takeOff.why.says).toBe(`${rules.length} rules were asked about 0 swaps.`)
  })

  it('shows what the boxes gave, put together swap by swap', () => {
    const { takeOff: answer, boxUses } = list('a', 'b')
    const name = 'wall plug (bit 8 mm, length 50 mm)'
    expect(answer.fromBox.map((line) => [line.name, line.itemKind, line.quantity])).toEqual([
      [name, 'plug', 2],
      [name, 'plug', 2],
    ])
    expect(answer.fromBox[0]?.why).toEqual(
      because("In the emitter's box.", 2, {
        from: boxUses.filter(({ swapId }) => swapId === 'a').map(({ why }) => why),
      }),
    )
    const [single] = takeOff(
      factsOf([swapOf('a', 'hall', { holes: [typical.hole], box: [boxed(3)] })]),
      shelf,
      figures,
    ).takeOff.fromBox
    expect(single?.why.says).toBe(
      "In the emitter's box, and it suits this wall: Hole A1 of the left bracket: wall plug 8 x 50.",
    )
  })

  it('stands in the order in which a fitter reads it', () => {
    const kinds = list('a').takeOff.lines.map(({ itemKind }) => itemKind)
    const order = ['emitter', 'plug', 'screw', 'inhibitor', 'testKit', 'sundry']
    expect(order.filter((kind) => kinds.some((one) => one === kind))).toEqual([...new Set(kinds)])
    expect(kinds[0]).toBe('emitter')
    expect(kinds.at(-1)).toBe('sundry')
  })
})

describe('a need in words', () => {
  it.each([
    [
      'pipeFitting',
      { shape: 'reducer', joint: 'none', outsideMm: 22, toMm: 15 },
      'pipe fitting (reducer, without a joint, outside 22 mm, to 15 mm)',
    ],
    ['testKit', { tests: 'inhibitor' }, 'test kit (inhibitor)'],
    ['anchor', { bitMm: 13 }, 'board anchor (bit 13 mm)'],
    ['tail', { thread: 'G1/2', lengthMm: { atLeast: 25 } }, 'tail extension (G1/2, length at least 25 mm)'],
    ['board', { heightMm: { atMost: 150 } }, 'backing board (height at most 150 mm)'],
    ['element', { watts: 300 }, 'heating element (300 W)'],
    ['filler', { forWall: 'plaster' }, 'filler (for plaster)'],
    ['filler', { forWall: 'tile' }, 'filler (for tile)'],
    ['vent', { sealing: 'oRing' }, 'vent (O-ring)'],
    ['sundry', { what: 'pipeFreezePack', count: 2 }, 'sundry (pipe freeze pack, count 2)'],
    ['sundry', { count: { atLeast: 2 } }, 'sundry (count at least 2)'],
    ['sundry', { ratedW: { atMost: 2 } }, 'sundry (rated at most 2 W)'],
  ] as const)('%s of %j', (kind, wanted, said) => {
    expect(needInWords({ kind, spec: wanted })).toBe(said)
  })
})
