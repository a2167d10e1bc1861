import { readFileSync, readdirSync } from 'node:fs'
import { dirname } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { listRow } from '../../../../src-main/domain/price-list.ts'
import type { ColumnMeaning, FileReading } from '../../../../src-main/domain/price-list.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { rowReaderOf } from '../../../../src-main/exchange/price-files/row-reader.ts'
import { answered } from '../../../answered.ts'
import { fileOf, heardAsDetected, heardOf, inCorpus, plainReading } from './read-for-tests.ts'

const corpus = dirname(inCorpus('README.md').path)
const names = readdirSync(corpus).filter((name) => !/\.(ts|md)$/.test(name))

describe('any file', () => {
  const bytes = fc.oneof(
    fc.uint8Array({ maxLength: 400 }).map((all) => Buffer.from(all)),
    fc
      .string({
        unit: fc.constantFrom(...Array.from('",;\t|\r\n £€.0123456789abc=<>&\u00a0')),
        maxLength: 400,
      })
      .map((text) => Buffer.from(text)),
  )

  it('is looked at or refused in words, and never breaks the reader', async () => {
    await fc.assert(
      fc.asyncProperty(bytes, async (some) => {
        const look = await lookAtFile(fileOf('wild.bin', some))
        if (!look.ok) expect(look.problems[0]?.message).toMatch(/^(Row|"wild\.bin"|Line|The sheet)/)
      }),
      { numRuns: 150 },
    )
  })

  it('of the corpus with bytes changed is looked at or refused, and what is taken is right by the schema', async () => {
    const change = fc.record({
      name: fc.constantFrom(...names),
      at: fc.array(fc.record({ place: fc.nat(), byte: fc.nat(255) }), { minLength: 1, maxLength: 6 }),
      cut: fc.option(fc.nat()),
    })
    await fc.assert(
      fc.asyncProperty(change, async ({ name, at, cut }) => {
        const whole = readFileSync(inCorpus(name).path)
        for (const { place, byte } of at) if (whole.length > 0) whole[place % whole.length] = byte
        const some = cut === null || whole.length === 0 ? whole : whole.subarray(0, cut % whole.length)
        const file = fileOf(`changed-${name}`, some)
        const look = await lookAtFile(file)
        if (!look.ok) return
        const { rows } = await heardOf(file, look.value.reading)
        for (const { rowNo, ...row } of rows) {
          expect(rowNo).toBeGreaterThan(0)
          expect(listRow.safeParse(row).success).toBe(true)
        }
      }),
      { numRuns: 150 },
    )
  })
})

describe('any row', () => {
  const meanings: readonly ColumnMeaning[] = [
    'code',
    'name',
    'gtin',
    'packHolds',
    'price',
    'pricePer',
    'unit',
    'group',
    'validFrom',
    'validTo',
    'breakFromPacks',
    'breakPrice',
  ]
  const cell = fc.oneof(
    fc.string({ maxLength: 20 }),
    fc.constantFrom(
      '',
      '1.50',
      '£1,234.50 /100',
      '1.234,50',
      '100',
      '0',
      '-1',
      '1e9',
      '01/02/2027',
      '60',
      '45658',
      'each',
      'pk 100',
      '2000000000015',
      '00126',
      '=1+1',
    ),
  )
  const reading = fc.record({
    decimal: fc.constantFrom('point' as const, 'comma' as const),
    dates: fc.constantFrom('dayFirst' as const, 'monthFirst' as const, 'yearFirst' as const),
    pricePerUnit: fc.boolean(),
  })

  it('is taken as the schema has it, or rejected in a sentence', () => {
    const columns: FileReading['columns'] = meanings.map((meaning, at) => ({ at, meaning }))
    fc.assert(
      fc.property(reading, fc.array(cell, { maxLength: 12 }), (how, cells) => {
        const read = answered(rowReaderOf({ ...plainReading, ...how, columns }))
        const row = read(cells, (says) => expect(says).toMatch(/^[A-Z].*\.$/))
        if (typeof row === 'string') expect(row).toMatch(/^["A-Z].*[.?]$/s)
        else expect(listRow.parse(row)).toEqual(row)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('any list', () => {
  const word = fc
    .stringMatching(/^[A-Za-z][A-Za-z ,;|"£é/']{0,20}[a-z]$/)
    .map((text) => text.replaceAll(/ +/g, ' '))
  const rows = fc.uniqueArray(
    fc.record({
      code: fc.stringMatching(/^0[0-9A-Z]{3,8}$/),
      name: word,
      pence: fc.integer({ min: 1, max: 99_999_999 }),
    }),
    { minLength: 3, maxLength: 30, selector: ({ code }) => code },
  )
  const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`
  const encoded = {
    'utf-8': (text: string) => Buffer.from(text),
    'utf-8 with its mark': (text: string) => Buffer.from(`\uFEFF${text}`),
    'utf-16le': (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le'),
    'utf-16be': (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le').swap16(),
    'windows-1252': (text: string) => Buffer.from(text, 'latin1'),
  } as const

  it('comes through any encoding, delimiter, line end and mark of decimals, code and penny exact', async () => {
    const how = fc.record({
      encoding: fc.constantFrom(...(Object.keys(encoded) as (keyof typeof encoded)[])),
      delimiter: fc.constantFrom(',', ';', '\t', '|'),
      lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
      comma: fc.boolean(),
      sign: fc.constantFrom('', '£'),
    })
    await fc.assert(
      fc.asyncProperty(rows, how, async (list, { encoding, delimiter, lineEnd, comma, sign }) => {
        const price = (pence: number) => {
          const written = `${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
          return quoted(sign + (comma ? written.replace('.', ',') : written))
        }
        const lines = list.map(({ code, name, pence }) =>
          [code, quoted(name), '1', price(pence)].join(delimiter),
        )
        const text = [['Code', 'Description', 'Pack size', 'Price'].join(delimiter), ...lines, ''].join(
          lineEnd,
        )
        const { rows: read, rejected } = await heardAsDetected(fileOf('list.txt', encoded[encoding](text)))
        expect(rejected).toEqual([])
        expect(read.map(({ code, name, packPence }) => ({ code, name, pence: packPence }))).toEqual(list)
      }),
      { numRuns: 100 },
    )
  })
})
