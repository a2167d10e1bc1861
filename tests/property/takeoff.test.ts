import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { given } from '../../src-main/domain/derivation.ts'
import type { Boxed, WantedSpec } from '../../src-main/domain/item.ts'
import { useBoxes } from '../../src-main/engine/takeoff/gather-needs.ts'
import type { JobNeed } from '../../src-main/engine/takeoff/gather-needs.ts'
import type { JobFacts } from '../../src-main/engine/takeoff/job-facts.ts'
import { specKey, specMatches } from '../../src-main/engine/takeoff/match-spec.ts'
import { mergeNeeds } from '../../src-main/engine/takeoff/merge-needs.ts'
import { typical } from '../typical-asks.ts'

const kinds = ['valve', 'vent', 'blank', 'plug', 'screw', 'seal'] as const
const specs: readonly Boxed['spec'][] = [{ thread: 'G1/2' }, { thread: 'G3/4' }, { bitMm: 8, lengthMm: 50 }]
const needs: fc.Arbitrary<readonly JobNeed[]> = fc.array(
  fc.record({
    kind: fc.constantFrom(...kinds),
    spec: fc.constantFrom<WantedSpec>(...specs),
    quantity: fc.integer({ min: 1, max: 20 }),
    unit: fc.constant('each' as const),
    shared: fc.boolean(),
    swapIds: fc.constantFrom(['a'], ['b'], ['a', 'b']),
    why: fc.constantFrom(given('one', 1), given('two', 2)),
  }),
  { maxLength: 30 },
)

const total = (
  list: readonly { readonly kind: string; readonly spec: object; readonly quantity: number }[],
) => {
  const sums = new Map<string, number>()
  for (const one of list) {
    const key = `${one.kind} ${JSON.stringify(one.spec)}`
    sums.set(key, (sums.get(key) ?? 0) + one.quantity)
  }
  return new Map([...sums].toSorted())
}

describe('putting needs together', () => {
  it('neither loses nor doubles anything', () => {
    fc.assert(
      fc.property(needs, (asked) => {
        expect(total(mergeNeeds(asked))).toEqual(total(asked))
        const keys = mergeNeeds(asked).map((need) => need.lineKey)
        expect(new Set(keys).size).toBe(keys.length)
      }),
    )
  })

  it('gives the same list whatever order the needs came in', () => {
    fc.assert(
      fc.property(needs, fc.infiniteStream(fc.nat()), (asked, random) => {
        const order = asked.map((need) => ({ need, place: random.next().value as number }))
        const shuffled = order.toSorted((a, b) => a.place - b.place).map(({ need }) => need)
        const bare = (list: readonly JobNeed[]) =>
          mergeNeeds(list).map(({ lineKey, quantity, why, shared, swapIds }) => ({
            lineKey,
            quantity,
            why,
            shared,
            swapIds: swapIds.toSorted(),
          }))
        expect(bare(shuffled)).toEqual(bare(asked))
      }),
    )
  })
})

describe('taking from the boxes first', () => {
  const box = fc.array(
    fc.record({
      kind: fc.constantFrom(...kinds),
      spec: fc.constantFrom<Boxed['spec']>(...specs),
      count: fc.integer({ min: 1, max: 8 }),
      suits: fc.constantFrom<Boxed['suits']>(undefined, ['solidMasonry'], ['boardOnStuds']),
    }),
    { maxLength: 6 },
  )
  const factsWith = (boxed: JobFacts['swaps'][number]['box']): JobFacts => {
    const swap = (swapId: string) => ({
      swapId,
      roomId: 'room',
      box: boxed,
      wallBuild: 'solidMasonry' as const,
      ask: typical.swap,
      sides: [],
      joints: [],
      holes: [],
    })
    return { job: typical.job, rooms: [], swaps: [swap('a'), swap('b')] }
  }

  it('what is bought and what the boxes give are together what was asked for', () => {
    fc.assert(
      fc.property(needs, box, (asked, boxed) => {
        const { remaining, used } = useBoxes(asked, factsWith(boxed))
        expect(total([...remaining, ...used])).toEqual(total(asked))
      }),
    )
  })

  it('a box never gives more than it holds, nor what does not suit the wall', () => {
    fc.assert(
      fc.property(needs, box, (asked, boxed) => {
        const { used } = useBoxes(asked, factsWith(boxed))
        for (const swapId of ['a', 'b']) {
          const given = total(used.filter((use) => use.swapId === swapId))
          const held = total(
            boxed
              .filter((one) => one.suits === undefined || one.suits.includes('solidMasonry'))
              .map((one) => ({ ...one, quantity: one.count })),
          )
          for (const [key, count] of given) expect(count).toBeLessThanOrEqual(held.get(key) ?? 0)
        }
      }),
    )
  })
})

describe('matching a spec', () => {
  it('what is asked for field by field is met by a thing that has those fields and more', () => {
    const spec = fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.oneof(fc.integer(), fc.string()))
    fc.assert(
      fc.property(spec, (wanted) => {
        expect(specMatches({ ...wanted, more: 1 }, wanted)).toBe(true)
      }),
    )
  })

  it('equal specs have one key, whatever the order of their fields', () => {
    expect(specKey({ thread: 'G1/2', lengthMm: { atLeast: 20 } })).toBe(
      specKey({ lengthMm: { atLeast: 20 }, thread: 'G1/2' }),
    )
  })
})
