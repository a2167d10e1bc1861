import { describe, expect, it } from 'vitest'
import type { Fill } from '../../../../src-main/domain/job.ts'
import { purchase as purchaseSchema } from '../../../../src-main/domain/quote.ts'
import { takeOffLine } from '../../../../src-main/domain/take-off.ts'
import { resolveNeed } from '../../../../src-main/engine/takeoff/resolve.ts'
import { asks, shelfWith, tail, tailOf } from './parts-for-tests.ts'

const options = { lineId: 'part-1', kerfMm: 2 }
const three = [tail('short', 30), tail('plain', 40), tail('fine', 50)]
const threePrices = [asks('short', 300), asks('plain', 350), asks('fine', 500)]

function resolved(favourites: readonly string[], prices = threePrices) {
  const shelf = shelfWith(three, prices, { favourites })
  const { line, purchase } = resolveNeed(tailOf(25, 2), shelf, options)
  const reasons = purchase?.why.from.slice(-2) ?? []
  return { line, purchase, says: reasons.map((why) => why.says), last: reasons.at(-1) }
}

describe('the item for a need', () => {
  it('is the cheapest where the firm prefers none, and the next one is named with what it would have cost', () => {
    const { line, purchase, last } = resolved([])
    expect([line.itemId, line.name, purchase?.costPence]).toEqual(['short', 'Tail 30 mm', 600])
    expect(last).toEqual({
      says: 'The cheapest item that will do. The next, Tail 40 mm, would have cost £7.00.',
      value: 700,
      unit: 'pence',
      from: [],
    })
  })

  it('is the preferred one though it is dearer, and the cheapest other is named', () => {
    const { line, purchase, last } = resolved(['fine'])
    expect([line.itemId, purchase?.costPence, purchase?.lineId]).toEqual(['fine', 1000, 'part-1'])
    expect(last?.says).toBe(
      "Your firm's preferred item. The cheapest other that will do, Tail 30 mm, would have cost £6.00.",
    )
    expect(last?.value).toBe(600)
  })

  it('is the cheapest of several preferred ones', () => {
    const { line, last } = resolved(['fine', 'plain'])
    expect(line.itemId).toBe('plain')
    expect(last?.says).toContain('The cheapest other that will do, Tail 30 mm,')
  })

  it('is not a preferred one that does not match', () => {
    const shelf = shelfWith(three, threePrices, { favourites: ['short'] })
    expect(resolveNeed(tailOf(45, 1), shelf, options).line.itemId).toBe('fine')
  })

  it('is another where nobody asks a price for the preferred one, and that is said', () => {
    const { line, says } = resolved(['fine'], threePrices.slice(0, 2))
    expect(line.itemId).toBe('short')
    expect(says).toEqual([
      'The cheapest item that will do. The next, Tail 40 mm, would have cost £7.00.',
      "Your firm's preferred item Tail 50 mm could not be bought. Nobody asks a price today for Tail 50 mm.",
    ])
  })

  it('says so where there is no other', () => {
    const one = [asks('plain', 350)]
    expect(resolved([], one).last).toMatchObject({
      says: 'The only item with a price that will do.',
      value: 700,
    })
    expect(resolved(['plain'], one).last?.says).toBe(
      "Your firm's preferred item, and the only one with a price that will do.",
    )
  })

  it('is the first by id of two that cost the same', () => {
    const prices = [asks('plain', 300), asks('fine', 300)]
    expect(resolved([], prices).line.itemId).toBe('fine')
    expect(resolved(['plain', 'fine'], prices).line.itemId).toBe('fine')
  })
})

describe('an emitter', () => {
  it('is the one that was named, with no word of others', () => {
    const emitter = { itemId: 'e', name: 'Panel', generic: false, kind: 'emitter' }
    const shelf = {
      ...shelfWith([], [asks('e', 9000)], { favourites: ['x'] }),
      emitters: new Map([['e', emitter as never]]),
    }
    const need = { ...tailOf(25, 1), kind: 'emitter' as const, spec: { itemId: 'e' } }
    const { line, purchase } = resolveNeed(need, shelf, options)
    expect([line.itemId, purchase?.costPence]).toEqual(['e', 9000])
    expect(purchase?.why.from.map(({ says }) => says)).toEqual([
      'Needed',
      '1 pack of 1, each £90.00, code e-code.',
      'Left over',
    ])
  })
})

describe('a gap', () => {
  const need = tailOf(60, 3)
  const gapKey = need.lineKey
  const filledWith = (fill: Fill, prices = threePrices) =>
    resolveNeed(
      need,
      shelfWith([...three, { ...tail('old', 70), retired: true }], prices, { fills: [fill] }),
      {
        lineId: 'part-4',
        kerfMm: 2,
      },
    )

  it('stays where nothing was chosen by hand, or for another line', () => {
    const { line, purchase } = filledWith({ gapKey: 'another', itemId: 'fine' })
    expect(purchase).toBeNull()
    expect(line.gap).toBe('The catalogue has no tail extension (G1/2, length at least 60 mm).')
  })

  it('names the item that would do but cannot be bought, and why', () => {
    const { line, purchase } = resolveNeed(tailOf(45, 1), shelfWith(three, []), options)
    expect(purchase).toBeNull()
    expect(line).toMatchObject({
      name: 'tail extension (G1/2, length at least 45 mm)',
      itemId: 'fine',
      generic: false,
      gap: 'Nobody asks a price today for Tail 50 mm.',
    })
    expect(line).not.toHaveProperty('pieces')
    expect(line).not.toHaveProperty('filled')
    const none = resolveNeed(tailOf(90, 1), shelfWith(three, []), options).line
    expect(none).not.toHaveProperty('itemId')
  })

  it('keeps the pieces that were to be cut', () => {
    const pieces = [{ id: 'a', lengthMm: 900, count: 1 }]
    expect(resolveNeed({ ...need, pieces }, shelfWith([], []), options).line.pieces).toEqual(pieces)
  })

  it('is filled with an item of the catalogue: three at 500 are 1500, and the line says how', () => {
    const { line, purchase } = filledWith({ gapKey, itemId: 'fine' })
    expect([purchase?.costPence, purchase?.itemId, purchase?.lineId]).toEqual([1500, 'fine', 'part-4'])
    expect(line).toMatchObject({ name: 'Tail 50 mm', itemId: 'fine', generic: false })
    expect(line.gap).toBeUndefined()
    expect(line.why).toMatchObject({
      says: 'Tails of 60 mm or more. The catalogue has no tail extension (G1/2, length at least 60 mm). Filled by hand with Tail 50 mm.',
      value: 3,
      unit: 'each',
      from: [need.why],
    })
  })

  it('is filled with a retired item too, when somebody sells it', () => {
    expect(filledWith({ gapKey, itemId: 'old' }, [asks('old', 420)]).purchase?.costPence).toBe(1260)
  })

  it('is filled with a thing by name and price: three at 4.15 are 12.45', () => {
    const { line, purchase } = filledWith({ gapKey, name: 'Brass tail, long', netCostPence: 415 })
    expect(purchase).toMatchObject({
      itemId: 'part-4',
      name: 'Brass tail, long',
      supplierId: 'one-off',
      supplierName: 'Bought elsewhere',
      need: 3,
      packs: [{ code: 'one-off', holds: 1, count: 3, packPence: 415 }],
      leftover: 0,
      costPence: 1245,
      oneOff: true,
    })
    expect(purchase?.why).toEqual({
      says: 'Named and priced by hand: quantity x what one costs.',
      value: 1245,
      unit: 'pence',
      from: [
        { says: 'Needed', value: 3, unit: 'each', from: [] },
        { says: 'One piece of Brass tail, long', value: 415, unit: 'pence', from: [] },
      ],
    })
    expect(line.name).toBe('Brass tail, long')
    expect([line.itemId, line.gap, line.generic]).toEqual([undefined, undefined, false])
    expect(line.why.says).toContain('Filled by hand with Brass tail, long.')
    expect(purchaseSchema.parse(purchase)).toEqual(purchase)
    expect(takeOffLine.parse(line)).toEqual(line)
  })

  it('stays one, and says why, where what was chosen is not there, is counted otherwise or has no price', () => {
    const gap = 'The catalogue has no tail extension (G1/2, length at least 60 mm).'
    const missing = filledWith({ gapKey, itemId: 'nothing' })
    expect(missing.line.gap).toBe(`${gap} nothing, chosen by hand, is no part in the catalogue.`)
    expect(missing.purchase).toBeNull()
    expect(filledWith({ gapKey, itemId: 'old' }).line.gap).toBe(
      `${gap} Nobody asks a price today for Tail 70 mm.`,
    )
    const metres = { ...need, unit: 'm' as const }
    const shelf = shelfWith(three, threePrices, { fills: [{ gapKey, itemId: 'fine' }] })
    expect(resolveNeed(metres, shelf, options).line.gap).toBe(
      `${gap} Tail 50 mm, chosen by hand, is counted in pieces, and this line in metres.`,
    )
  })

  it('of two and a half metres at 3.33 costs 8.33, as one pack', () => {
    const metres = { ...need, unit: 'm' as const, quantity: 2.5 }
    const shelf = shelfWith([], [], { fills: [{ gapKey, name: 'Odd pipe', netCostPence: 333 }] })
    const { purchase } = resolveNeed(metres, shelf, options)
    // 2.5 x 333 = 832.5, a half penny up.
    expect(purchase?.costPence).toBe(833)
    expect(purchase?.packs).toEqual([{ code: 'one-off', holds: 2.5, count: 1, packPence: 833 }])
    expect(purchase?.why.from[1]?.says).toBe('One m of Odd pipe')
    const whole = resolveNeed({ ...metres, quantity: 2 }, shelf, options)
    expect(whole.purchase?.packs).toEqual([{ code: 'one-off', holds: 2, count: 1, packPence: 666 }])
  })

  it('is no longer filled once the catalogue has what is needed', () => {
    const fills = [{ gapKey: tailOf(25, 2).lineKey, itemId: 'fine' }]
    expect(resolveNeed(tailOf(25, 2), shelfWith(three, threePrices, { fills }), options).line.itemId).toBe(
      'short',
    )
  })
})
