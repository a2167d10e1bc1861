import { describe, expect, it } from 'vitest'
import type { InputOf } from '../../../src-main/contract/requests.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { listChanges, undoChange } from '../../../src-main/store/price-list/changes.ts'
import { chosenRows } from '../../../src-main/store/price-list/chosen-rows.ts'
import { readPrices } from '../../../src-main/store/prices.ts'
import { reading, writing } from '../../../src-main/store/store.ts'
import type { Store, ReadTx } from '../../../src-main/store/store.ts'
import { refused } from '../../answered.ts'
import { asked, outcome } from './ask-for-tests.ts'
import { deskWith, filledStore, valueOf } from '../store-for-tests.ts'

async function opened(): Promise<{ readonly desk: Desk; readonly store: Store }> {
  const store = await filledStore()
  return { store, desk: deskWith(store) }
}

const tenPercent = {
  change: { kind: 'percent', basisPoints: 1000 },
  rounding: { toPence: 5, rule: 'nearest' },
} as const
const north = { which: { supplierId: 'north' }, ...tenPercent }

/** Every row and every past price as they lie in the file, in one order. */
async function everything(tx: ReadTx): Promise<unknown> {
  const rows = await tx.selectFrom('supplier_row').selectAll().orderBy('row_no').execute()
  const past = await tx.selectFrom('past_price').selectAll().orderBy('row_no').orderBy('valid_from').execute()
  return { rows, past }
}

const pricesOn = async (store: Store, day: string) =>
  Object.fromEntries(
    (await reading(store, (tx) => readPrices(tx, day))).map(({ supplierId, code, packPence }) => [
      `${supplierId} ${code}`,
      packPence,
    ]),
  )

describe('a bulk change compared', () => {
  it('shows the changed rows with old and new price, the biggest rises first, and changes nothing', async () => {
    const { desk, store } = await opened()
    const before = await reading(store, everything)
    const seen = await asked(desk, 'price.bulkCompare', north)
    // By hand: 98.50 to 108.35, 112.00 to 123.20, 14.50 to 15.95, 29.00 to 31.90.
    expect(
      seen.changed.map(({ code, wasPence, willPence, risesBasisPoints }) => [
        code,
        wasPence,
        willPence,
        risesBasisPoints,
      ]),
    ).toEqual([
      ['00126', 9850, 10835, 1000],
      ['00127', 11200, 12320, 1000],
      ['126', 1450, 1595, 1000],
      ['127/3', 2900, 3190, 1000],
    ])
    expect(seen.counts).toEqual({
      new: 0,
      changed: 4,
      unchanged: 0,
      missing: 0,
      rejected: 0,
      duplicated: 0,
    })
    expect(await reading(store, everything)).toEqual(before)
    expect(await reading(store, (tx) => listChanges(tx, 10))).toEqual([])
  })

  it('puts the bigger rise before the smaller, and falls last, the biggest fall first', async () => {
    const { desk } = await opened()
    const toPound = {
      change: { kind: 'amount', pence: 0 },
      rounding: { toPence: 100, rule: 'nearest' },
    } as const
    const { changed, counts } = await asked(desk, 'price.bulkCompare', {
      which: { rowNos: await rowNosOf(desk) },
      ...toPound,
    })
    // 18.99 to 19.00 (5), 98.50 to 99.00 (51), 14.50 to 15.00 (345); 112.00, 95.00 and 29.00 stay.
    expect(changed.map(({ code, risesBasisPoints }) => [code, risesBasisPoints])).toEqual([
      ['126', 345],
      ['00126', 51],
      ['TV15A', 5],
    ])
    expect(counts).toMatchObject({ changed: 3, unchanged: 3 })
    const down = {
      change: { kind: 'amount', pence: -20 },
      rounding: { toPence: 100, rule: 'nearest' },
    } as const
    const both = await asked(desk, 'price.bulkCompare', { which: { text: '15' }, ...down })
    // 14.30 to 14.00 and 18.79 to 19.00.
    expect(both.changed.map(({ code, willPence }) => [code, willPence])).toEqual([
      ['TV15A', 1900],
      ['126', 1400],
    ])
  })

  it('shows what open jobs would cost', async () => {
    const { desk } = await opened()
    const { openWork } = await asked(desk, 'price.bulkCompare', north)
    expect(openWork).toEqual([])
  })

  it('takes the rows of a supplier, a group, a text or by number', async () => {
    const { desk, store } = await opened()
    await writing(store, (tx) =>
      tx.updateTable('supplier_row').set({ group_key: 'PIPE' }).where('name', 'like', 'Copper%').execute(),
    )
    const codes = async (which: InputOf<'price.bulkCompare'>['which']) =>
      (await asked(desk, 'price.bulkCompare', { which, ...tenPercent })).changed
        .map(({ code }) => code)
        .toSorted()
    expect(await codes({ supplierId: 'south' })).toEqual(['SM-4410', 'TV15A'])
    expect(await codes({ group: 'PIPE' })).toEqual(['126', '127/3'])
    expect(await codes({ group: 'PIPE', text: '22mm' })).toEqual(['127/3'])
    expect(await codes({ text: 'panel 1000' })).toEqual(['00126', 'SM-4410'])
    expect(await codes({ supplierId: 'south', text: 'panel 1000' })).toEqual(['SM-4410'])
    expect(await codes({ text: '?!' })).toEqual([])
    expect(await codes({ supplierId: 'north', group: 'NONE' })).toEqual([])
    expect(await codes({ rowNos: [] })).toEqual([])
  })
})

describe('the rows of a text', () => {
  it('are those that the search of the lists finds', async () => {
    const { desk } = await opened()
    for (const text of [
      'trv',
      'thermostatic valve',
      'tube 15',
      '126',
      '127/3',
      'panel 600',
      'TV15A',
      'rad',
    ]) {
      const { rows } = await asked(desk, 'priceList.search', { text, most: 500 })
      const { changed } = await asked(desk, 'price.bulkCompare', { which: { text }, ...tenPercent })
      expect(changed.length, text).toBeGreaterThan(0)
      expect(changed.map(({ code }) => code).toSorted(), text).toEqual(
        rows.map(({ code }) => code).toSorted(),
      )
    }
  })
})

async function rowNosOf({ store }: Desk): Promise<readonly number[]> {
  if (store === null) throw new Error('There is a store')
  return (await reading(store, (tx) => chosenRows(tx, {}, '2026-03-02'))).map(({ rowNo }) => rowNo)
}

describe('a bulk change applied', () => {
  it('does what was compared from its day on, breaks with it, and is listed', async () => {
    const { desk, store } = await opened()
    const before = await pricesOn(store, '2026-03-01')
    const done = await asked(desk, 'price.bulkApply', north)
    expect(done.counts.changed).toBe(4)
    expect(await pricesOn(store, '2026-03-01')).toEqual(before)
    expect(await pricesOn(store, '2026-03-02')).toEqual({
      ...before,
      'north 00126': 10835,
      'north 00127': 12320,
      'north 126': 1595,
      'north 127/3': 3190,
    })
    const pipe = (await reading(store, (tx) => readPrices(tx, '2026-03-02', ['test-pipe-22'])))[0]
    // 27.00 and a tenth is 29.70.
    expect(pipe?.breaks).toEqual([{ fromPacks: 10, packPence: 2970 }])
    expect(await reading(store, (tx) => listChanges(tx, 10))).toEqual([
      {
        changeNo: done.changeNo,
        kind: 'bulk',
        supplierId: 'north',
        says: 'Up 10 %, to the nearest 5p',
        at: desk.now(),
        counts: done.counts,
        undone: false,
      },
    ])
  })

  it('is undone so that every row is exactly as it was', async () => {
    const { desk, store } = await opened()
    const before = await reading(store, everything)
    const { changeNo } = await asked(desk, 'price.bulkApply', north)
    expect(await reading(store, everything)).not.toEqual(before)
    valueOf(await writing(store, (tx) => undoChange(tx, changeNo ?? 0, desk.now())))
    expect(await reading(store, everything)).toEqual(before)
  })

  it('is not undone by its inverse: pennies were rounded away', async () => {
    const { desk, store } = await opened()
    const before = await pricesOn(store, '2026-03-02')
    const odd = { ...north, change: { kind: 'percent', basisPoints: 333 } } as const
    await asked(desk, 'price.bulkApply', odd)
    await asked(desk, 'price.bulkApply', { ...odd, change: { kind: 'percent', basisPoints: -333 } })
    expect(await pricesOn(store, '2026-03-02')).not.toEqual(before)
  })

  it('can begin later, and leaves today’s prices alone until then', async () => {
    const { desk, store } = await opened()
    const before = await pricesOn(store, '2026-03-31')
    await asked(desk, 'price.bulkApply', { ...north, validFrom: '2026-04-01' })
    expect(await pricesOn(store, '2026-03-31')).toEqual(before)
    expect(await pricesOn(store, '2026-04-01')).toMatchObject({ 'north 00126': 10835 })
  })

  it('begins from the price of its day, and leaves one that is to begin later', async () => {
    const { desk, store } = await opened()
    await asked(desk, 'price.bulkApply', { ...north, validFrom: '2026-06-01' })
    await asked(desk, 'price.bulkApply', {
      which: { supplierId: 'north', text: '00126' },
      change: { kind: 'amount', pence: 100 },
      rounding: { toPence: 1, rule: 'nearest' },
      validFrom: '2026-04-01',
    })
    expect((await pricesOn(store, '2026-03-31'))['north 00126']).toBe(9850)
    expect((await pricesOn(store, '2026-04-01'))['north 00126']).toBe(9950)
    expect((await pricesOn(store, '2026-06-01'))['north 00126']).toBe(10835)
  })

  it('keeps the pack of the price that it changes, where a later price is for another pack', async () => {
    const { desk, store } = await opened()
    await writing(store, async (tx) => {
      const later = { pack_holds: 10, item_holds: 30, pack_pence: 4000, valid_from: '2026-06-01' }
      await tx.updateTable('supplier_row').set(later).where('code', '=', '126').execute()
      const { row_no } = await tx
        .selectFrom('supplier_row')
        .select('row_no')
        .where('code', '=', '126')
        .executeTakeFirstOrThrow()
      await tx
        .insertInto('past_price')
        .values({
          row_no,
          valid_from: '2026-01-01',
          valid_to: '2026-05-31',
          pack_holds: 5,
          pack_pence: 2000,
        })
        .execute()
    })
    await asked(desk, 'price.bulkApply', north)
    const pipeOn = async (day: string) => {
      const [price] = await reading(store, (tx) => readPrices(tx, day, ['test-pipe-15']))
      return [price?.packHolds, price?.packPence]
    }
    // A pack of ten holds 30 m, so one of five holds 15 m.
    expect(await pipeOn('2026-03-01')).toEqual([15, 2000])
    expect(await pipeOn('2026-03-02')).toEqual([15, 2200])
    expect(await pipeOn('2026-06-01')).toEqual([30, 4000])
  })

  it('writes nothing, and lists nothing, where it changes no price', async () => {
    const { desk, store } = await opened()
    const none = { ...north, change: { kind: 'percent', basisPoints: 0 } } as const
    const done = await asked(desk, 'price.bulkApply', none)
    expect(done).toMatchObject({ changeNo: null, counts: { changed: 0, unchanged: 4 } })
    expect(await reading(store, (tx) => listChanges(tx, 10))).toEqual([])
  })

  it('changes a price that has ended no more', async () => {
    const { desk, store } = await opened()
    await writing(store, (tx) =>
      tx.updateTable('supplier_row').set({ valid_to: '2026-03-01' }).where('code', '=', '00126').execute(),
    )
    const done = await asked(desk, 'price.bulkApply', north)
    expect(done.counts).toMatchObject({ changed: 3, unchanged: 0 })
  })

  it('leaves rows that are gone from their list alone', async () => {
    const { desk, store } = await opened()
    await writing(store, (tx) =>
      tx.updateTable('supplier_row').set({ gone_from: '2026-03-01' }).where('code', '=', '00126').execute(),
    )
    expect((await asked(desk, 'price.bulkCompare', north)).changed.map(({ code }) => code)).toEqual([
      '00127',
      '126',
      '127/3',
    ])
  })
})

describe('a bulk change is refused', () => {
  it('when it names no rows, or a supplier that is not there', async () => {
    const { desk } = await opened()
    for (const which of [{}, { text: '  ' }]) {
      expect(refused(await outcome(desk, 'price.bulkApply', { which, ...tenPercent }))).toEqual({
        code: 'invalid',
        message: 'This would change every price of every supplier: name a supplier, a group, a text or rows.',
        path: 'which',
      })
    }
    const nobody = { which: { supplierId: 'nobody' }, ...tenPercent }
    expect(refused(await outcome(desk, 'price.bulkCompare', nobody))).toMatchObject({
      code: 'not-found',
      path: 'which.supplierId',
    })
  })

  it('when a price would be past all sense, naming the row, and then changes none', async () => {
    const { desk, store } = await opened()
    const before = await reading(store, everything)
    const much = { ...north, change: { kind: 'amount', pence: 99_990_000 } } as const
    expect(refused(await outcome(desk, 'price.bulkApply', much))).toEqual({
      code: 'impossible',
      message:
        '00127: A price of £112.00 would become £1000012.00, and no price may be above £1000000.00: change it by less.',
      path: 'change',
    })
    expect(await reading(store, everything)).toEqual(before)
  })

  it('with a sentence and a path for each wrong field', async () => {
    const { desk } = await opened()
    const wrong = [
      [{ ...north, change: { kind: 'percent', basisPoints: -10_001 } }, 'change.basisPoints'],
      [{ ...north, change: { kind: 'amount', pence: 1.5 } }, 'change.pence'],
      [{ ...north, rounding: { toPence: 25, rule: 'up' } }, 'rounding.toPence'],
      [{ ...north, rounding: { toPence: 5, rule: 'sideways' } }, 'rounding.rule'],
      [{ ...north, validFrom: '2026-02-30' }, 'validFrom'],
    ] as const
    for (const [input, path] of wrong) {
      const first = refused(await answer('price.bulkCompare', input, desk))
      expect([first.code, first.path]).toEqual(['invalid', path])
      expect(first.message).toMatch(/\.$/)
    }
  })
})
