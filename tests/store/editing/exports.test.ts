import { mkdir, readFile, stat, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { InputOf } from '../../../src-main/contract/requests.ts'
import type { ListRow } from '../../../src-main/domain/price-list.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { lookAtFile } from '../../../src-main/exchange/price-files/look-at-file.ts'
import { readRows } from '../../../src-main/exchange/price-files/read-rows.ts'
import { writing } from '../../../src-main/store/store.ts'
import { answered, refused } from '../../answered.ts'
import { asked } from './ask-for-tests.ts'
import { smallCatalogue } from '../catalogue-for-tests.ts'
import { deskWith, filledStore, tempFolder } from '../store-for-tests.ts'

async function openDesk(changes: Partial<Desk> = {}): Promise<Desk & { readonly papersFolder: string }> {
  const papersFolder = join(await tempFolder(), 'papers')
  return { ...deskWith(await filledStore(), changes), papersFolder }
}

/** The rows of an export as the program itself understands them, with no word of how to read it. */
async function understood(path: string): Promise<readonly ListRow[]> {
  const source = { path, name: path }
  const { reading } = answered(await lookAtFile(source))
  const rows: ListRow[] = []
  const heard = { row: (_: number, row: ListRow) => void rows.push(row), rejected: () => undefined }
  expect(answered(await readRows(source, reading, heard)).rows).toBe(rows.length)
  return rows
}

const north: readonly ListRow[] = [
  {
    code: '00126',
    name: 'Double panel radiator 600 × 1000',
    packHolds: 1,
    packPence: 9850,
    validFrom: '2026-01-01',
  },
  {
    code: '00127',
    name: 'Double panel radiator 600 × 1200',
    packHolds: 1,
    packPence: 11200,
    validFrom: '2026-01-01',
  },
  { code: '126', name: 'Copper pipe 15 mm', packHolds: 3, packPence: 1450, validFrom: '2026-01-01' },
  {
    code: '127/3',
    name: 'Copper pipe 22 mm',
    packHolds: 3,
    packPence: 2900,
    breaks: [{ fromPacks: 10, packPence: 2700 }],
    validFrom: '2026-01-01',
  },
]

describe('price.export', () => {
  it.each(['csv', 'xlsx'] as const)(
    'writes a list as %s that can be read in again as it was',
    async (form) => {
      const desk = await openDesk()
      const written = await asked(desk, 'price.export', { form, which: { supplierId: 'north' } })
      expect(written).toEqual({
        path: join(desk.papersFolder, `prices-north-2026-03-02.${form}`),
        rows: 4,
        bytes: (await stat(written.path)).size,
      })
      expect(await understood(written.path)).toEqual(north)
    },
  )

  it('writes the prices of today, as listed: no discount is taken off, and none that is to begin yet', async () => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) =>
      tx.updateTable('supplier_row').set({ group_key: 'PIPE' }).where('name', 'like', 'Copper%').execute(),
    )
    const group = { supplierId: 'north', group: 'PIPE', name: '', basisPoints: 5000, validFrom: '2026-01-01' }
    await asked(desk, 'discountGroup.save', { group })
    const later = { which: { supplierId: 'north' }, validFrom: '2026-05-01' } as const
    const change = { kind: 'percent', basisPoints: 5000 } as const
    await asked(desk, 'price.bulkApply', { ...later, change, rounding: { toPence: 1, rule: 'up' } })
    const { path } = await asked(desk, 'price.export', { form: 'csv', which: { supplierId: 'north' } })
    const rows = await understood(path)
    expect(rows.map(({ code, packPence, group: key }) => [code, packPence, key])).toEqual([
      ['00126', 9850, undefined],
      ['00127', 11200, undefined],
      ['126', 1450, 'PIPE'],
      ['127/3', 2900, 'PIPE'],
    ])
    expect(rows[0]).toMatchObject({ validFrom: '2026-01-01', validTo: '2026-04-30' })
    expect(rows[3]?.breaks).toEqual([{ fromPacks: 10, packPence: 2700 }])
  })

  it('writes some of the rows, in the order of their codes', async () => {
    const desk = await openDesk()
    const { path, rows } = await asked(desk, 'price.export', {
      form: 'csv',
      which: { supplierId: 'north', text: 'pipe' },
    })
    expect(rows).toBe(2)
    expect((await understood(path)).map(({ code }) => code)).toEqual(['126', '127/3'])
  })

  it('goes where the terminal says, over an older export and over nothing else', async () => {
    const desk = await openDesk({ mayChoosePath: true })
    await mkdir(desk.papersFolder)
    const out = join(desk.papersFolder, 'list.csv')
    const input = { form: 'csv', which: { supplierId: 'south' }, out } as const
    expect((await asked(desk, 'price.export', input)).path).toBe(out)
    expect((await asked(desk, 'price.export', input)).rows).toBe(2)
    await writeFile(out, 'somebody’s notes')
    expect(refused(await answer('price.export', input, desk))).toEqual({
      code: 'conflict',
      message: `${out} is already there and is no CSV file of this kind, so it was left as it is.`,
      path: 'out',
      next: 'Name another file, or take that one away.',
    })
    expect(await readFile(out, 'utf8')).toBe('somebody’s notes')
    expect(refused(await answer('price.export', { ...input, out: desk.papersFolder }, desk))).toMatchObject({
      code: 'io',
      message: `${desk.papersFolder} is a folder, so no file can stand there.`,
    })
    const nowhere = { ...input, out: join(desk.papersFolder, 'no', 'list.csv') }
    expect(refused(await answer('price.export', nowhere, desk))).toMatchObject({ code: 'io', path: 'out' })
    const sheet = { ...input, form: 'xlsx', out: join(desk.papersFolder, 'list.xlsx') } as const
    await asked(desk, 'price.export', sheet)
    expect((await asked(desk, 'price.export', sheet)).rows).toBe(2)
  })

  it('is refused where nobody may name a path, and for a supplier that is not there', async () => {
    const desk = await openDesk()
    const input = { form: 'csv', which: { supplierId: 'north' } } as const
    const wrong = [
      [{ ...input, out: 'list.csv' }, 'refused', 'out'],
      [{ form: 'csv', which: { supplierId: 'nobody' } }, 'not-found', 'which.supplierId'],
      [{ form: 'pdf', which: { supplierId: 'north' } }, 'invalid', 'form'],
    ] as const
    for (const [asks, code, path] of wrong) {
      expect(refused(await answer('price.export', asks, desk))).toMatchObject({ code, path })
    }
    const terminal = { ...desk, mayChoosePath: true }
    expect(refused(await answer('price.export', { ...input, out: 'a\0b' }, terminal))).toMatchObject({
      code: 'invalid',
      message: 'A file’s path holds no null character.',
    })
  })
})

describe('price.export of more than one list', () => {
  const file = async (desk: Desk, which: InputOf<'price.export'>['which']) => {
    const written = await asked(desk, 'price.export', { form: 'csv', which })
    const [head = '', ...lines] = (await readFile(written.path, 'utf8')).trim().split(/\r?\n/)
    return { name: basename(written.path), rows: written.rows, head, lines }
  }

  it('writes every list with the supplier of each row, and reads it in again all the same', async () => {
    const desk = await openDesk()
    const all = await file(desk, {})
    const { found } = await asked(desk, 'priceList.search', { text: '' })
    expect(all).toMatchObject({ name: 'prices-all-2026-03-02.csv', rows: found })
    expect(all.head.endsWith(',Supplier')).toBe(true)
    const { suppliers } = await asked(desk, 'supplier.list', {})
    const named = new Set(all.lines.map((row) => row.split(',').at(-1)))
    const selling = suppliers.filter(({ rows }) => rows > 0)
    expect([...named].toSorted()).toEqual(selling.map(({ supplier }) => supplier.name).toSorted())
    const rows = await understood(join(desk.papersFolder, 'prices-all-2026-03-02.csv'))
    expect(rows).toHaveLength(found)
  })

  it.each([
    [{ linked: true }, 'prices-found-2026-03-02.csv'],
    [{ linked: false }, 'prices-found-2026-03-02.csv'],
    [{ stale: true }, 'prices-found-2026-03-02.csv'],
    [{ stale: false }, 'prices-found-2026-03-02.csv'],
    [{ supplierId: 'north', stale: false }, 'prices-north-found-2026-03-02.csv'],
    [{ text: 'pipe' }, 'prices-found-2026-03-02.csv'],
    [{ text: 'pipe', supplierId: 'north', linked: true }, 'prices-north-found-2026-03-02.csv'],
  ])('writes what the search finds with %o', async (which, name) => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) =>
      tx
        .updateTable('supplier_row')
        .set({ item_id: null, valid_from: '2020-01-01' })
        .where('code', '=', '127/3')
        .execute(),
    )
    const { found } = await asked(desk, 'priceList.search', { text: '', ...which })
    expect(await file(desk, which)).toMatchObject({ name, rows: found })
  })

  it('keeps a change of many prices to the rows that are shown', async () => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) =>
      tx.updateTable('supplier_row').set({ valid_from: '2020-01-01' }).where('code', '=', '126').execute(),
    )
    const change = { kind: 'percent', basisPoints: 1000 } as const
    const input = { change, rounding: { toPence: 1, rule: 'nearest' } } as const
    const which = { supplierId: 'north', stale: true }
    const { changed } = await asked(desk, 'price.bulkCompare', { which, ...input })
    expect(changed.map(({ code }) => code)).toEqual(['126'])
    expect((await asked(desk, 'price.bulkApply', { which, ...input })).counts.changed).toBe(1)
  })
})

describe('an export read back', () => {
  it('comes by its name, and by nothing that leads elsewhere', async () => {
    const desk = await openDesk()
    const written = await asked(desk, 'price.export', { form: 'xlsx', which: { supplierId: 'north' } })
    const { base64 } = await asked(desk, 'paper.read', { name: basename(written.path) })
    expect(Buffer.from(base64, 'base64')).toEqual(await readFile(written.path))
    for (const name of ['../tailpiece.db', 'a/b.csv', '.csv', 'tailpiece.db', 'list.csv.exe']) {
      expect(refused(await answer('paper.read', { name }, desk))).toMatchObject({
        code: 'invalid',
        path: 'name',
      })
    }
  })
})

describe('catalogue.export of a part', () => {
  it('writes what a search finds, in its order, without retired items', async () => {
    const desk = await openDesk()
    const search = { text: 'pipe' }
    const { items } = await asked(desk, 'catalogue.search', search)
    const written = await asked(desk, 'catalogue.export', { form: 'csv', ...search })
    expect(basename(written.path)).toBe('catalogue-found-2026-03-02.csv')
    const [, ...lines] = (await readFile(written.path, 'utf8')).trim().split(/\r?\n/)
    expect(lines.map((one) => one.split(',')[0])).toEqual(items.map(({ item }) => item.itemId))
    const retired = await asked(desk, 'catalogue.search', { text: '', retired: true })
    expect((await asked(desk, 'catalogue.export', { form: 'csv', retired: true })).rows).toBe(retired.found)
  })

  it('writes what one supplier has a price for, at that price', async () => {
    const desk = await openDesk()
    const written = await asked(desk, 'catalogue.export', { form: 'csv', supplierId: 'north' })
    expect(basename(written.path)).toBe('catalogue-north-2026-03-02.csv')
    expect(written.rows).toBe(4)
    const unknown = await answer('catalogue.export', { form: 'csv', supplierId: 'nobody' }, desk)
    expect(refused(unknown)).toMatchObject({ code: 'not-found', path: 'supplierId' })
  })
})

describe('catalogue.export', () => {
  it('writes every item, or those of a kind', async () => {
    const desk = await openDesk()
    await asked(desk, 'favourite.set', { itemId: 'test-pipe-15', favourite: true })
    const all = await asked(desk, 'catalogue.export', { form: 'csv' })
    expect(all).toMatchObject({
      path: join(desk.papersFolder, 'catalogue-2026-03-02.csv'),
      rows: smallCatalogue.items.length,
    })
    const { rows, path } = await asked(desk, 'catalogue.export', { form: 'csv', kind: 'pipe' })
    expect(rows).toBe(3)
    expect(await readFile(path, 'utf8')).toBe(
      '\uFEFFItem,Kind,Name,Also called,Generic,Retired,Favourite,Note,Lowest price,material,outsideMm\r\n' +
        'test-pipe-8,pipe,Copper pipe 8 mm,tube,yes,no,no,,,copper,8\r\n' +
        'test-pipe-15,pipe,Copper pipe 15 mm,tube,yes,no,yes,,14.50,copper,15\r\n' +
        'test-pipe-22,pipe,Copper pipe 22 mm,tube,yes,no,no,,29.00,copper,22\r\n',
    )
  })

  it('writes a workbook', async () => {
    const desk = await openDesk()
    const { path, bytes } = await asked(desk, 'catalogue.export', { form: 'xlsx' })
    const file = await readFile(path)
    expect(file.length).toBe(bytes)
    expect(file.subarray(0, 2).toString('latin1')).toBe('PK')
  })
})
