import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FileReading, ListRow } from '../../../../src-main/domain/price-list.ts'
import { catalogueTable } from '../../../../src-main/exchange/price-export/catalogue-table.ts'
import { csvFile } from '../../../../src-main/exchange/price-export/csv-file.ts'
import { guardedText, unguarded } from '../../../../src-main/exchange/price-export/guarded-text.ts'
import { priceTable, readingOfExport } from '../../../../src-main/exchange/price-export/price-table.ts'
import { plainNumber, poundsText } from '../../../../src-main/exchange/price-export/table.ts'
import { xlsxFile } from '../../../../src-main/exchange/price-export/xlsx-file.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { readRows } from '../../../../src-main/exchange/price-files/read-rows.ts'
import { answered } from '../../../answered.ts'
import { smallCatalogue } from '../../../store/catalogue-for-tests.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tailpiece-export-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

type Form = 'csv' | 'xlsx'
const forms: readonly Form[] = ['csv', 'xlsx']

async function exported(rows: readonly ListRow[], form: Form): Promise<string> {
  const path = join(folder, `list.${form}`)
  await writeFile(path, form === 'csv' ? csvFile(priceTable(rows)) : await xlsxFile(priceTable(rows)))
  return path
}

async function readBack(path: string, reading: FileReading): Promise<readonly ListRow[]> {
  const back: ListRow[] = []
  const read = await readRows({ path, name: 'list' }, reading, {
    row: (_, row) => back.push(row),
    rejected: ({ rowNo, says }) => {
      throw new Error(`Row ${rowNo}: ${says}`)
    },
  })
  answered(read)
  return back
}

async function roundTrip(rows: readonly ListRow[], form: Form): Promise<readonly ListRow[]> {
  return readBack(await exported(rows, form), readingOfExport(rows, form))
}

const plain: ListRow = { code: '00126', name: 'Elbow, 15 mm', packHolds: 10, packPence: 1234 }
const awkward: readonly ListRow[] = [
  plain,
  { code: '=1+1', name: '=HYPERLINK("http://example.com")', packHolds: 1, packPence: 0 },
  { code: '+44', name: '@SUM(A1)', packHolds: 0.5, packPence: 1 },
  { code: '-7', name: "'=already guarded", packHolds: 2.75, packPence: 100_000_000 },
  { code: "''-7", name: '\'tis a name, with "marks" in it', packHolds: 100_000, packPence: 99 },
  { code: '1/2" BSP', name: '', packHolds: 1, packPence: 5, group: 'PIPE', gtin: '4006381333931' },
  { code: 'Ø15;|', name: 'Größe 15 ×½', packHolds: 1, packPence: 5, validFrom: '2026-01-05' },
  {
    code: '0007',
    name: 'With breaks',
    packHolds: 3,
    packPence: 500,
    validFrom: '2026-02-28',
    validTo: '2026-12-31',
    breaks: [
      { fromPacks: 5, packPence: 450 },
      { fromPacks: 100, packPence: 401 },
    ],
  },
  { ...plain, code: '0008', breaks: [{ fromPacks: 2, packPence: 0 }] },
]

describe('a price list written out', () => {
  it.each(forms)('comes back from %s as it was, read as it says itself', async (form) => {
    expect(await roundTrip(awkward, form)).toEqual(awkward)
  })

  it.each(forms)('is understood from %s without being told how to read it', async (form) => {
    const path = await exported(awkward, form)
    const { reading, notes } = answered(await lookAtFile({ path, name: `list.${form}` }))
    expect(reading).toEqual(readingOfExport(awkward, form))
    expect(notes.filter((note) => !note.endsWith('The price is nought, as written.'))).toEqual([])
    expect(await readBack(path, reading)).toEqual(awkward)
  })

  const text = fc
    .string({
      unit: fc.constantFrom(
        '=',
        '+',
        '-',
        '@',
        "'",
        '"',
        'a',
        'b',
        '1',
        '9',
        ' ',
        ',',
        ';',
        '|',
        '£',
        'é',
        '½',
        '×',
        '/',
        '.',
      ),
      minLength: 1,
      maxLength: 12,
    })
    .map((value) => value.replaceAll(/ +/g, ' ').trim())
  const code = text.filter((value) => value !== '' && !/^\d(?:[.,]\d+)?E\+?\d{1,3}$/i.test(value))
  const day = fc
    .integer({ min: 0, max: 20_000 })
    .map((n) => new Date(Date.UTC(2000, 0, 1 + n)).toISOString().slice(0, 10))
  const pence = fc.integer({ min: 0, max: 100_000_000 })
  const breaks = fc
    .uniqueArray(fc.integer({ min: 2, max: 100_000 }), { minLength: 1, maxLength: 4 })
    .chain((froms) =>
      fc
        .array(pence, { minLength: froms.length, maxLength: froms.length })
        .map((prices) =>
          froms.toSorted((a, b) => a - b).map((fromPacks, at) => ({ fromPacks, packPence: prices[at] ?? 0 })),
        ),
    )
  const row: fc.Arbitrary<ListRow> = fc.record(
    {
      code,
      name: text,
      packHolds: fc.integer({ min: 1, max: 10_000_000 }).map((n) => n / 100),
      packPence: pence,
      gtin: fc.constantFrom('4006381333931', '96385074'),
      group: fc.constantFrom('A1', 'PIPE', '007'),
      breaks,
      validFrom: day,
    },
    { requiredKeys: ['code', 'name', 'packHolds', 'packPence'] },
  )

  it.each(forms)('comes back from %s whatever its rows', { timeout: 120_000 }, async (form) => {
    const rows = fc.array(row, { minLength: 1, maxLength: 12 })
    await fc.assert(
      fc.asyncProperty(rows, async (some) => {
        expect(await roundTrip(some, form)).toEqual(some)
      }),
      { numRuns: form === 'csv' ? 200 : 25 },
    )
  })
})

describe('CSV', () => {
  const csv = (rows: readonly ListRow[]) => Buffer.from(csvFile(priceTable(rows))).toString('utf8')

  it('is UTF-8 behind a byte-order mark, in lines that end in CR LF', () => {
    const bytes = csvFile(priceTable([plain]))
    expect(Array.from(bytes.slice(0, 3))).toEqual([0xef, 0xbb, 0xbf])
    expect(csv([plain])).toBe(
      '\uFEFFCode,Name,GTIN,Pack holds,Pack price,Discount group,Valid from,Valid to\r\n' +
        '00126,"Elbow, 15 mm",,10,12.34,,,\r\n',
    )
  })

  it('lets no text begin as a formula would', () => {
    const cells = csv(awkward)
      .split('\r\n')
      .slice(1)
      .flatMap((line) => line.split(','))
      .map((cell) => cell.replace(/^"/, ''))
    expect(cells.filter((cell) => /^[-=+@\t\r]/.test(cell))).toEqual([])
  })

  it('doubles marks within marks', () => {
    expect(csv([{ ...plain, name: 'a "b" c' }])).toContain(',"a ""b"" c",')
  })
})

describe('a guarded text', () => {
  it('gets an apostrophe where it would begin a formula, and one more where it has some already', () => {
    for (const text of ['=1', '+1', '-1', '@a', '\ta', '\ra', "'=1", "''+1"]) {
      expect(guardedText(text)).toBe(`'${text}`)
    }
    for (const text of ['', 'a', "'a", "'", 'a=1', ' =1', '1-2']) expect(guardedText(text)).toBe(text)
  })

  it('comes back as it was, whatever it was', () => {
    const any = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', 'a', '1') }),
    )
    fc.assert(
      fc.property(any, (text) => {
        expect(unguarded(guardedText(text))).toBe(text)
        expect(/^[=+\-@\t\r]/.test(guardedText(text))).toBe(false)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('figures written out', () => {
  it('are pounds with two figures behind the point', () => {
    expect([0, 5, 99, 100, 123_456, -5, -250].map(poundsText)).toEqual([
      '0.00',
      '0.05',
      '0.99',
      '1.00',
      '1234.56',
      '-0.05',
      '-2.50',
    ])
  })

  it('know no powers of ten', () => {
    expect([1, 0.5, 12.75, 1e-7, 100_000].map(plainNumber)).toEqual([
      '1',
      '0.5',
      '12.75',
      '0.0000001',
      '100000',
    ])
  })
})

describe('the catalogue written out', () => {
  it('has a column for every figure, and loses none', () => {
    const listed = smallCatalogue.items.map((item) => ({ item, favourite: false, fromPence: null }))
    const { columns, rows } = catalogueTable(listed)
    const headings = columns.map(({ heading }) => heading)
    expect(headings.slice(0, 9)).toEqual([
      'Item',
      'Kind',
      'Name',
      'Also called',
      'Generic',
      'Retired',
      'Favourite',
      'Note',
      'Lowest price',
    ])
    for (const [at, { item }] of listed.entries()) {
      const cell = (heading: string) => rows[at]?.[headings.indexOf(heading)]
      const figures: Readonly<Record<string, unknown>> = item.kind === 'emitter' ? item : item.spec
      for (const [field, value] of Object.entries(figures)) {
        if (typeof value === 'number') expect(cell(field)).toEqual({ kind: 'number', value })
      }
      expect(cell('Item')).toEqual({ kind: 'text', text: item.itemId })
    }
  })

  it('says what is generic, retired and a favourite, what else it is called, and its lowest price', () => {
    const [first] = smallCatalogue.items
    if (first === undefined || first.kind !== 'emitter')
      throw new Error('The small catalogue begins with a panel')
    const item = {
      ...first,
      alsoCalled: ['rad', 'big one'],
      note: '=note',
      box: [{ kind: 'vent', spec: { thread: 'G1/2' }, count: 1 }],
    } as const
    const { columns, rows } = catalogueTable([{ item, favourite: true, fromPence: 9500 }])
    const cells = Object.fromEntries(columns.map(({ heading }, at) => [heading, rows[0]?.[at]]))
    expect(cells).toMatchObject({
      'Also called': { kind: 'text', text: 'rad; big one' },
      Generic: { kind: 'text', text: 'yes' },
      Retired: { kind: 'text', text: 'no' },
      Favourite: { kind: 'text', text: 'yes' },
      Note: { kind: 'text', text: '=note' },
      'Lowest price': { kind: 'pence', pence: 9500 },
      form: { kind: 'text', text: 'panel' },
      panel: { kind: 'text', text: 'doubleFinned' },
      box: { kind: 'text', text: '[{"kind":"vent","spec":{"thread":"G1/2"},"count":1}]' },
    })
    expect(cells['kind']).toBeUndefined()
  })
})
