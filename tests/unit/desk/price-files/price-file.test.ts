import { writeFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { readPrices } from '../../../../src-main/store/prices.ts'
import { reading as readStore } from '../../../../src-main/store/store.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import {
  ask,
  compare,
  everyTable,
  header,
  listOf,
  problemOf,
  reading,
  room,
  take,
} from './price-files-for-tests.ts'

const none = { new: 0, changed: 0, unchanged: 0, missing: 0, rejected: 0, duplicated: 0 }
const tables = (desk: Desk) => everyTable(storeOf(desk).file)
/** The small catalogue's rows at this supplier. */
const north = 4

describe('a price file', () => {
  it('is compared without anything being written, and then taken in as it was compared', async () => {
    const { desk, put } = await room()
    const path = await put('spring.csv', listOf(50))
    const before = tables(desk)
    const compared = valueOf(await compare(desk, path))
    expect(tables(desk)).toEqual(before)
    expect(compared.counts).toEqual({ ...none, new: 50, missing: north })
    expect(compared.added[0]).toEqual({
      code: 'T000000',
      name: 'Copper elbow 0 15mm',
      wasPence: null,
      willPence: 1000,
      willHolds: 1,
    })
    expect(compared.missing.map(({ code }) => code)).toEqual(['00126', '00127', '126', '127/3'])
    expect(compared.fileHash).toMatch(/^[0-9a-f]{64}$/)
    const { changeNo, counts } = valueOf(await take(desk, path))
    expect(counts).toEqual(compared.counts)
    const { changes } = valueOf(await ask(desk, 'price.changes', {}))
    expect(changes).toEqual([
      {
        changeNo,
        kind: 'file',
        supplierId: 'north',
        says: 'spring.csv',
        at: desk.now(),
        counts,
        undone: false,
      },
    ])
    const found = valueOf(await ask(desk, 'priceList.search', { text: 'elbow 15 mm T000007' }))
    expect(found.rows.map(({ code, listPence, group }) => [code, listPence, group])).toEqual([
      ['T000007', 1070, 'G0'],
    ])
    const [gone] = valueOf(await ask(desk, 'priceList.search', { text: '00126' })).rows
    expect(gone).toMatchObject({ code: '00126', goneFrom: '2026-03-02', itemId: 'test-panel-600x1000' })
  })

  it('changes nothing when it is taken a second time, and says so', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', listOf(50))
    await take(desk, path)
    const before = tables(desk)
    const same = { ...none, unchanged: 50 }
    expect(valueOf(await take(desk, path))).toEqual({ changeNo: null, counts: same })
    // Another file with the same rows: not known by its hash, but row by row.
    const other = await put('again.csv', `${listOf(50)}\n\n`)
    expect(valueOf(await take(desk, other))).toEqual({ changeNo: null, counts: same })
    expect(tables(desk)).toEqual(before)
  })

  it('shows the biggest rises first and then the biggest falls, with old, new and the share', async () => {
    const { desk, put } = await room()
    await take(
      desk,
      await put('old.csv', `${header}\nA,One,,1,10.00,\nB,Two,,1,20.00,\nC,Three,,1,5.00,\nD,Four,,10,8.00,`),
    )
    const next = await put(
      'new.csv',
      `${header}\nA,One,,1,10.50,\nB,Two,,1,16.00,\nC,Three,,1,6.00,\nD,Four,,20,12.00,`,
    )
    const { counts, changed } = valueOf(await compare(desk, next))
    expect(counts).toEqual({ ...none, changed: 4 })
    expect(
      changed.map(({ code, wasPence, willPence, risesBasisPoints }) => [
        code,
        wasPence,
        willPence,
        risesBasisPoints,
      ]),
    ).toEqual([
      ['D', 800, 1200, undefined],
      ['C', 500, 600, 2000],
      ['A', 1000, 1050, 500],
      ['B', 2000, 1600, -2000],
    ])
    expect(changed[0]).toMatchObject({ wasHolds: 10, willHolds: 20 })
  })

  it('takes the first of two rows with one code, and shows both rows; what it cannot read it shows too', async () => {
    const { desk, put } = await room()
    const path = await put(
      'odd.csv',
      `${header}\nA,One,,1,10.00,\nA,One again,,1,11.00,\nB,Two,,1,ask,\nB,Two,,1,12.00,\nA,One,,1,10.00,`,
    )
    const { counts, duplicated, rejected } = valueOf(await compare(desk, path))
    expect(counts).toMatchObject({ new: 2, rejected: 1, duplicated: 2 })
    expect(duplicated).toEqual([
      { code: 'A', rowNos: [2, 3, 6], says: 'A is in row 2 and again in row 3: row 2 counts.' },
    ])
    expect(rejected.map(({ rowNo }) => rowNo)).toEqual([4])
    await take(desk, path)
    const [a] = valueOf(await ask(desk, 'priceList.search', { text: 'One' })).rows
    expect(a).toMatchObject({ code: 'A', listPence: 1000 })
  })

  it('does not count a row as missing that it has but that cannot be read', async () => {
    const { desk, put } = await room()
    await take(desk, await put('old.csv', `${header}\nA,One,,1,10.00,`))
    const { counts } = valueOf(await compare(desk, await put('new.csv', `${header}\nA,One,,1,ask,`)))
    expect(counts).toEqual({ ...none, rejected: 1 })
  })

  it('brings a row back that was missing, and keeps the price by date', async () => {
    const { desk, put } = await room()
    const both = await put('both.csv', `${header}\nA,One,,1,10.00,\nB,Two,,1,5.00,`)
    await take(desk, both, { validFrom: '2026-01-01' })
    await take(desk, await put('one.csv', `${header}\nA,One,,1,11.00,`), { validFrom: '2026-02-01' })
    const rowNo = valueOf(await ask(desk, 'priceList.search', { text: 'Two' })).rows[0]?.rowNo ?? 0
    expect(valueOf(await ask(desk, 'priceList.row', { rowNo })).row.goneFrom).toBe('2026-02-01')
    await take(desk, await put('back.csv', `${header}\nA,One,,1,12.00,\nB,Two,,1,5.00,`), {
      validFrom: '2026-05-01',
    })
    const back = valueOf(await ask(desk, 'priceList.row', { rowNo }))
    expect(back.row.goneFrom).toBeUndefined()
    expect(back.prices).toEqual([{ packHolds: 1, listPence: 500, validFrom: '2026-01-01' }])
    const a = valueOf(await ask(desk, 'priceList.search', { text: 'One' })).rows[0]
    // On 2 March, the day of the desk.
    expect(a).toMatchObject({ listPence: 1100, validFrom: '2026-02-01', validTo: '2026-04-30' })
    expect(valueOf(await ask(desk, 'priceList.row', { rowNo: a?.rowNo ?? 0 })).prices).toEqual([
      { packHolds: 1, listPence: 1200, validFrom: '2026-05-01' },
      { packHolds: 1, listPence: 1100, validFrom: '2026-02-01', validTo: '2026-04-30' },
      { packHolds: 1, listPence: 1000, validFrom: '2026-01-01', validTo: '2026-01-31' },
    ])
  })

  it('whose prices begin before those that stand goes in before them', async () => {
    const { desk, put } = await room()
    await take(desk, await put('may.csv', `${header}\nA,One,,1,12.00,`), { validFrom: '2026-05-01' })
    await take(desk, await put('june.csv', `${header}\nA,One,,1,13.00,`), { validFrom: '2026-06-01' })
    await take(desk, await put('between.csv', `${header}\nA,One,,1,12.50,`), { validFrom: '2026-05-15' })
    const rowNo = valueOf(await ask(desk, 'priceList.search', { text: 'One' })).rows[0]?.rowNo ?? 0
    expect(valueOf(await ask(desk, 'priceList.row', { rowNo })).prices).toEqual([
      { packHolds: 1, listPence: 1300, validFrom: '2026-06-01' },
      { packHolds: 1, listPence: 1250, validFrom: '2026-05-15', validTo: '2026-05-31' },
      { packHolds: 1, listPence: 1200, validFrom: '2026-05-01', validTo: '2026-05-14' },
    ])
  })

  it('that changed after it was compared is refused as stale, and nothing is taken', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', listOf(5))
    const { fileHash } = valueOf(await compare(desk, path))
    await writeFile(path, listOf(6))
    const before = tables(desk)
    const outcome = await ask(desk, 'priceFile.apply', {
      file: { path },
      supplierId: 'north',
      reading,
      fileHash,
    })
    expect(problemOf(outcome)).toMatchObject({ code: 'stale', path: 'fileHash' })
    expect(tables(desk)).toEqual(before)
  })

  it('links rows to items, and their prices are then those of the catalogue, after the discount of their group', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', `${header}\nC15,Coil of tube 15,,1,40.00,Pipe`)
    const links = [{ code: 'C15', itemId: 'test-pipe-15', itemHolds: 25 }]
    await take(desk, path, { links, validFrom: '2026-02-01' })
    await ask(desk, 'discountGroup.save', {
      group: { supplierId: 'north', group: 'Pipe', name: 'Pipe', basisPoints: 1250, validFrom: '2026-03-01' },
    })
    const on = async (day: string) =>
      (await readStore(storeOf(desk), (tx) => readPrices(tx, day, ['test-pipe-15'])))
        .filter(({ code }) => code === 'C15')
        .map(({ packHolds, packPence }) => [packHolds, packPence])
    expect(await on('2026-01-31')).toEqual([])
    expect(await on('2026-02-28')).toEqual([[25, 4000]])
    expect(await on('2026-03-01')).toEqual([[25, 3500]])
    const [row] = valueOf(await ask(desk, 'priceList.search', { text: 'coil' })).rows
    expect(row).toMatchObject({ listPence: 4000, netPence: 3500, discountBasisPoints: 1250, itemHolds: 25 })
    // A coil twice as long.
    await take(desk, await put('long.csv', `${header}\nC15,Coil of tube 15,,2,70.00,Pipe`))
    expect(await on('2026-02-28')).toEqual([[25, 4000]])
    expect(await on('2026-03-02')).toEqual([[50, 6125]])
  })

  it('refuses links to items that are not there, a supplier that is not, and a path where none may be named', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', listOf(3))
    expect(problemOf(await take(desk, path, { links: [{ code: 'T000000', itemId: 'none' }] }))).toMatchObject(
      {
        code: 'not-found',
        path: 'links[0].itemId',
      },
    )
    expect(
      problemOf(await take(desk, path, { links: [{ code: 'X9', itemId: 'test-pipe-15' }] })),
    ).toMatchObject({
      code: 'not-found',
      path: 'links[0].code',
    })
    const other = await ask(desk, 'priceFile.compare', { file: { path }, supplierId: 'nobody', reading })
    expect(problemOf(other)).toMatchObject({ code: 'not-found', path: 'supplierId' })
    const window = { ...desk, mayChoosePath: false }
    expect(problemOf(await compare(window, path))).toMatchObject({ code: 'refused', path: 'file.path' })
  })

  it('suggests items for rows by item number, by code and by name, each with its reason', async () => {
    const { desk, put } = await room()
    const gtin = '5012345678900'
    await take(desk, await put('one.csv', `${header}\nP22,Tube,${gtin},3,29.00,\nLONGCODE8,Tube,,1,9.00,`), {
      links: [
        { code: 'P22', itemId: 'test-pipe-22' },
        { code: 'LONGCODE8', itemId: 'test-pipe-8' },
      ],
    })
    const path = await put(
      'two.csv',
      `${header}\nX1,Anything,${gtin},3,28.00,\nLONGCODE8,Anything,,1,8.00,\nX2,White blank plug G1/2 with O-ring chrome,,1,2.00,\nX3,Pipe,,1,1.00,`,
    )
    const input = { file: { path }, supplierId: 'south', reading }
    const { suggested } = valueOf(await ask(desk, 'priceFile.compare', input))
    expect(suggested.map(({ code, itemId, because }) => [code, itemId, because])).toEqual([
      ['X1', 'test-pipe-22', `It has the item number ${gtin} of a row that is this item.`],
      ['LONGCODE8', 'test-pipe-8', 'It has the code LONGCODE8 of a row that is this item.'],
      ['X2', 'test-blank-half', 'Its description has every word of “Blank plug G1/2 with O-ring”.'],
    ])
  })
})
