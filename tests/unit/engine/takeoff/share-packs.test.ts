import { describe, expect, it } from 'vitest'
import { resolveNeeds } from '../../../../src-main/engine/takeoff/buying/share-packs.ts'
import { asks, pipe, shelfWith, tail, tailOf } from './parts-for-tests.ts'

describe('lines that come to the same item', () => {
  // Packs of ten at 5.00. Seven and three: two packs apart, one together.
  const bag = asks('fine', 500, { packHolds: 10 })
  const shelf = shelfWith([tail('fine', 50)], [bag])
  const needs = [tailOf(20, 7, 'a'), tailOf(60, 1, 'x'), tailOf(35, 3, 'b')]

  it('share packs: seven and three from one pack of ten are 5.00, not 10.00', () => {
    const lines = resolveNeeds(needs, shelf, 2)
    expect(lines.map(({ purchase }) => purchase?.costPence)).toEqual([500, undefined])
    const [first] = lines
    expect(first?.purchase).toMatchObject({ need: 10, leftover: 0, lineId: 'part-1' })
    expect(first?.line).toMatchObject({ quantity: 10, swapIds: ['a', 'b'], itemId: 'fine', shared: false })
    expect(first?.line.why).toMatchObject({ says: 'Added up from 2 places.', value: 10 })
    expect(first?.line.why.from.map(({ value }) => value)).toEqual([7, 3])
  })

  it('say what they would have cost apart', () => {
    const why = resolveNeeds(needs, shelf, 2)[0]?.purchase?.why
    expect(why?.value).toBe(500)
    expect(why?.from.at(-1)).toMatchObject({
      says: 'Lines of the same item share packs. Bought line by line these 2 would have cost £10.00.',
      value: 1000,
      unit: 'pence',
    })
    const apart = why?.from.at(-1)?.from.map(({ says, value }) => [says, value])
    expect(apart).toEqual([
      ['Whole packs, the cheapest that cover the need.', 500],
      ['Whole packs, the cheapest that cover the need.', 500],
    ])
  })

  it('leave a gap as a line of its own, in its place', () => {
    const [, gap] = resolveNeeds(needs, shelf, 2)
    expect(gap?.line.gap).toContain('length at least 60 mm')
    expect(gap?.purchase).toBeNull()
  })

  it('are numbered by their place', () => {
    const other = shelfWith([tail('fine', 50), tail('long', 90)], [bag, asks('long', 900)])
    const ids = resolveNeeds([...needs, tailOf(20, 1, 'c')], other, 2).map(({ purchase }) => purchase?.lineId)
    expect(ids).toEqual(['part-1', 'part-2'])
  })

  it('keep a shared one shared', () => {
    const [a, , b] = needs
    if (a === undefined || b === undefined) throw new Error('There are three needs')
    expect(resolveNeeds([a, { ...b, shared: true }], shelf, 2)[0]?.line.shared).toBe(true)
  })

  it('cut pipe from the same lengths: 1.7 m and 1.2 m from one of 3 m', () => {
    const need = (lineKey: string, lengthMm: number) => ({
      ...tailOf(1, lengthMm / 1000),
      lineKey,
      kind: 'pipe' as const,
      spec: { outsideMm: 15 },
      unit: 'm' as const,
      pieces: [{ id: lineKey, lengthMm, count: 1 }],
    })
    const stock = shelfWith([pipe], [asks('pipe', 1200, { packHolds: 3 })])
    const [line, ...others] = resolveNeeds([need('p', 1700), need('q', 1200)], stock, 2)
    expect(others).toEqual([])
    expect(line?.purchase?.costPence).toBe(1200)
    expect(line?.line.pieces).toHaveLength(2)
    expect(line?.purchase?.bars).toEqual([
      {
        stockId: 'pipe-code',
        cuts: [
          { id: '1, p', lengthMm: 1700 },
          { id: '2, q', lengthMm: 1200 },
        ],
        // 3000 - 2900 and two cuts of 2.
        offcutMm: 96,
      },
    ])
  })

  it('stay apart where two suppliers cost less: a bag at 5.00 and two singles at 0.60 are 6.20', () => {
    // Together twelve would be two bags, 10.00, or twelve singles, 7.20.
    const both = [bag, asks('fine', 60, { supplierId: 'moor', code: 'ONE' })]
    const lines = resolveNeeds([tailOf(20, 10), tailOf(35, 2)], shelfWith([tail('fine', 50)], both), 2)
    expect(
      lines.map(({ purchase }) => [purchase?.lineId, purchase?.supplierId, purchase?.costPence]),
    ).toEqual([
      ['part-1', 'town', 500],
      ['part-2', 'moor', 120],
    ])
  })

  it('are put together where that costs the same', () => {
    const lines = resolveNeeds([tailOf(20, 10), tailOf(35, 10)], shelfWith([tail('fine', 50)], [bag]), 2)
    expect(lines.map(({ purchase }) => purchase?.costPence)).toEqual([1000])
  })

  it('never put two one-off things together', () => {
    const fills = [tailOf(70, 1), tailOf(80, 2)].map(({ lineKey }) => ({
      gapKey: lineKey,
      name: 'Odd tail',
      netCostPence: 100,
    }))
    const lines = resolveNeeds([tailOf(70, 1), tailOf(80, 2)], shelfWith([], [], { fills }), 2)
    expect(lines.map(({ purchase }) => [purchase?.lineId, purchase?.itemId, purchase?.costPence])).toEqual([
      ['part-1', 'part-1', 100],
      ['part-2', 'part-2', 200],
    ])
  })
})
