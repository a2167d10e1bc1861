import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastFirst, leastPlaces } from '../../../../src-main/engine/choose/least-first.ts'

const keys = fc.array(fc.integer({ min: -5, max: 20 }), { maxLength: 60 })
const sorted = (list: readonly number[]) =>
  [...list.keys()].toSorted((a, b) => (list[a] ?? 0) - (list[b] ?? 0) || a - b)

describe('places in the order of their keys', () => {
  it('come as if they had been sorted, of equals the first, as many as are wanted', () => {
    fc.assert(
      fc.property(keys, fc.nat(70), (list, most) => {
        expect(leastPlaces(Float64Array.from(list), most)).toEqual(sorted(list).slice(0, most))
      }),
    )
  })
  it('sink to where a larger key belongs', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { minLength: 1, maxLength: 40 }), (pairs) => {
        const order = leastFirst(Float64Array.from(pairs, ([key]) => key))
        const raised = new Set<number>()
        const came: number[] = []
        for (let at = order.first(); at !== null; at = order.first()) {
          const [key = 0, more = 0] = pairs[at] ?? []
          if (raised.has(at)) {
            expect(order.keyOf(at)).toBe(key + more)
            came.push(at)
            order.drop()
          } else {
            raised.add(at)
            order.raise(key + more)
          }
        }
        expect(came).toEqual(sorted(pairs.map(([key, more]) => key + more)))
      }),
    )
  })
  it('leave the keys that were given as they were', () => {
    const given = Float64Array.of(3, 1)
    leastFirst(given).raise(9)
    expect([...given]).toEqual([3, 1])
  })
  it('are none where there is none, and stay none', () => {
    const order = leastFirst(new Float64Array(0))
    order.drop()
    order.raise(1)
    expect(order.first()).toBe(null)
    expect(leastPlaces(new Float64Array(0), 3)).toEqual([])
  })
})
