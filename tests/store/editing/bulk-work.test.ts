import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { applyBulkOver } from '../../../src-main/desk/prices/bulk-work.ts'
import type { BulkApplyTask } from '../../../src-main/desk/prices/bulk-work.ts'
import type { Watch } from '../../../src-main/desk/running/watch.ts'
import { storeOf } from '../../../src-main/desk/store-of.ts'
import { refused } from '../../answered.ts'
import { everyTable, listOf, room, take } from '../../unit/desk/price-files/price-files-for-tests.ts'
import { valueOf } from '../store-for-tests.ts'
import { asked, outcome } from './ask-for-tests.ts'

const north = {
  which: { supplierId: 'north' },
  change: { kind: 'percent', basisPoints: 1000 },
  rounding: { toPence: 5, rule: 'nearest' },
} as const

async function longList() {
  const { desk, put } = await room()
  valueOf(await take(desk, await put('list.csv', listOf(3000)), { validFrom: '2026-01-01' }))
  return { desk, file: storeOf(desk).file }
}

describe('a bulk change of a long list', () => {
  it('is undone so that every row of every table is as it was', async () => {
    const { desk, file } = await longList()
    const but = ['price_change']
    const before = everyTable(file, but)
    const compared = await asked(desk, 'price.bulkCompare', north)
    expect(everyTable(file, but)).toEqual(before)
    // 3000 rows from 10.00 on in steps of 10p; the rows that came with the catalogue are gone from the list.
    expect(compared.counts).toMatchObject({ changed: 3000, unchanged: 0 })
    const { changeNo, counts } = await asked(desk, 'price.bulkApply', north)
    expect(counts).toEqual(compared.counts)
    const { rows } = await asked(desk, 'priceList.search', { text: 'T002999' })
    // 10.00 and 2999 steps of 10p are 309.90; a tenth more is 340.89, and to 5p 340.90.
    expect(rows.map(({ listPence }) => listPence)).toEqual([34_090])
    await asked(desk, 'price.undo', { changeNo: changeNo ?? 0 })
    expect(everyTable(file, but)).toEqual(before)
  })

  it('leaves every table as it was wherever it is stopped, and says so', async () => {
    const { desk, file } = await longList()
    const before = everyTable(file)
    const { folder } = storeOf(desk)
    const task: BulkApplyTask = {
      kind: 'bulkApply',
      file,
      folder,
      today: desk.today,
      at: desk.now(),
      bulk: north,
    }
    let moments = 0
    for (let stopAt = 1; ; stopAt += 1) {
      const db = new Database(file)
      let asks = 0
      const watch: Watch = { goesOn: () => (asks += 1) < stopAt, stopped: () => asks >= stopAt }
      const done = await applyBulkOver(db, task, watch)
      db.close()
      if (done.ok) break
      moments += 1
      expect(refused(done)).toMatchObject({
        code: 'refused',
        message: 'It was stopped. Nothing was changed.',
      })
      expect(everyTable(file)).toEqual(before)
    }
    expect(moments).toBeGreaterThan(5)
    expect(everyTable(file)).not.toEqual(before)
  })

  it('is stopped by its name while it goes on', async () => {
    const { desk, file } = await longList()
    const before = everyTable(file)
    const working = outcome(desk, 'price.bulkApply', { ...north, workId: 'many' })
    let stopped = false
    while (!stopped) {
      await new Promise((resolve) => setTimeout(resolve, 1))
      ;({ stopped } = await asked(desk, 'work.cancel', { workId: 'many' }))
    }
    expect(refused(await working)).toMatchObject({ code: 'refused' })
    expect(everyTable(file)).toEqual(before)
  })
})
