import writeXlsxFile from 'write-excel-file/node'
import { describe, expect, it } from 'vitest'
import { detectReading } from '../../../../src-main/exchange/price-files/detect-reading.ts'
import { letters, plainFigures } from '../../../../src-main/exchange/price-files/forms/workbook.ts'
import { priceFileLimits } from '../../../../src-main/exchange/price-files/limits.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { readRows } from '../../../../src-main/exchange/price-files/read-rows.ts'
import { rowsXml, workbook, workbookXml } from '../../../price-files/workbook-for-tests.ts'
import { packedZip } from '../../../price-files/zip-for-tests.ts'
import { answered, refused } from '../../../answered.ts'
import { fileOf, heardAsDetected, inCorpus } from './read-for-tests.ts'

const headings = ['Code', 'Description', 'Price']
const sheet = (rows: Parameters<typeof rowsXml>[0], name = 'Prices') => ({
  name,
  cells: rowsXml([headings, ...rows]),
})
const part = (name: string, text: string | Buffer) => ({ name, bytes: Buffer.from(text) })

describe('a workbook', () => {
  it('gives values: codes with their noughts, the last results of formulas, days, cells merged downwards', async () => {
    const { reading, rows, notes } = await heardAsDetected(inCorpus('workbook.xlsx'))
    expect(reading).toMatchObject({ form: 'sheet', sheet: 'Price list', headerRow: 3 })
    expect(rows).toEqual([
      {
        rowNo: 4,
        code: '00126',
        name: 'Elbow 15 mm',
        packHolds: 10,
        packPence: 1050,
        group: 'EF',
        validFrom: '2026-01-01',
      },
      {
        rowNo: 5,
        code: '00127',
        name: 'Tee 15 mm',
        packHolds: 10,
        packPence: 1234,
        group: 'EF',
        validFrom: '2026-01-02',
      },
      {
        rowNo: 6,
        code: 'Q-3',
        name: '=2+3',
        packHolds: 1,
        packPence: 123_450,
        group: 'EF',
        validFrom: '2027-02-01',
      },
    ])
    expect(notes).toEqual([])
  })

  it('shows its sheets, and is read from the one that is chosen', async () => {
    const found = answered(await lookAtFile(inCorpus('workbook.xlsx')))
    expect(found.sheets).toEqual(['Read me', 'Price list'])
    expect(found.headings).toEqual([
      'Part number',
      'Description',
      'Pack size',
      'Trade price',
      'Group',
      'Effective from',
    ])
    const other = answered(
      await lookAtFile(inCorpus('workbook.xlsx'), { ...found.reading, sheet: 'Read me', headerRow: 0 }),
    )
    expect(other.raw).toEqual([['Quarnmoor Trade Counter'], ['Prices are on the next sheet']])
    expect(
      refused(await lookAtFile(inCorpus('workbook.xlsx'), { ...found.reading, sheet: 'Gone' })),
    ).toMatchObject({
      path: 'reading.sheet',
      message: '"workbook.xlsx" has no sheet "Gone"; it has "Read me", "Price list".',
    })
  })

  it('as another program writes it is read the same', async () => {
    const source = fileOf('written.xlsx', '')
    await writeXlsxFile(
      [
        headings.map((value) => ({ value, type: String })),
        [
          { value: '00126', type: String },
          { value: 'Elbow', type: String },
          { value: 1.05, type: Number },
        ],
        [
          { value: 'A2', type: String },
          { value: 'Tee & cap', type: String },
          { value: '£1,234.50 /100', type: String },
        ],
      ],
      { sheet: 'Prices' },
    ).toFile(source.path)
    const { rows } = await heardAsDetected(source)
    expect(rows.map(({ code, name, packPence }) => [code, name, packPence])).toEqual([
      ['00126', 'Elbow', 105],
      ['A2', 'Tee & cap', 1235],
    ])
  })

  it('with codes that are bare numbers says that noughts may be lost', async () => {
    const list = [
      [126, 'Elbow', 1.5],
      ['00127', 'Tee', 2.5],
      [{ value: 128, style: 1 }, 'Cap', 3.5],
    ]
    const look = answered(await lookAtFile(fileOf('bare.xlsx', workbook([sheet(list)]))))
    expect(look.understood.map(({ code }) => code)).toEqual(['126', '00127', '00128'])
    expect(look.notes).toEqual([
      'The codes of 1 of the first rows are numbers in the workbook: noughts ahead of them, if there were any, are lost. ' +
        'Ask for a list with codes as text.',
    ])
    expect(answered(await lookAtFile(inCorpus('workbook.xlsx'))).notes).toEqual([])
  })

  it('with decimal commas in its texts still has its numbers right', async () => {
    const { reading, rows } = await heardAsDetected(
      fileOf(
        'commas.xlsx',
        workbook([
          sheet([
            ['A1', 'Elbow', '1.234,50'],
            ['A2', 'Tee', 12.5],
            ['A3', 'Cap', '3,10'],
          ]),
        ]),
      ),
    )
    expect(reading.decimal).toBe('comma')
    expect(rows.map(({ packPence }) => packPence)).toEqual([123_450, 1250, 310])
  })

  it('with an error in a cell has that row rejected, not read as if the cell were empty', async () => {
    const error = (ref: string) => `<c r="${ref}" t="e"><f>1/0</f><v>#DIV/0!</v></c>`
    const text = (ref: string, value: string) => `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`
    const cells = [
      rowsXml([
        [...headings, 'Pack size'],
        ['A1', 'Elbow', 1.5, 10],
      ]),
      `<row r="3">${text('A3', 'A2')}${error('C3')}</row>`,
      `<row r="4">${text('A4', 'A3')}${text('C4', '2.50')}${error('D4')}</row>`,
      `<row r="5">${error('A5')}${text('C5', '2.50')}</row>`,
    ].join('')
    const { rows, rejected } = await heardAsDetected(
      fileOf('error.xlsx', workbook([{ name: 'Prices', cells }])),
    )
    expect(rows.map(({ code, packHolds }) => [code, packHolds])).toEqual([['A1', 10]])
    expect(rejected.map(({ rowNo, says }) => [rowNo, says])).toEqual([
      [3, 'The price "#ERROR" is not an amount of money.'],
      [4, 'The pack size "#ERROR" is not a number of units.'],
      [5, 'The code is a spreadsheet\'s error, "#ERROR".'],
    ])
  })

  it('stops when asked', async () => {
    const source = fileOf('stop.xlsx', workbook([sheet([['A1', 'Elbow', 1.5]])]))
    const reading = answered(await detectReading(source))
    const stopped = await readRows(source, reading, {
      row: () => undefined,
      rejected: () => undefined,
      progress: () => false,
    })
    expect(refused(stopped).message).toBe('Reading "stop.xlsx" was stopped before its end.')
  })
})

describe('what a workbook may not do', () => {
  const prices = workbookXml([sheet([['A1', 'Elbow', 1.5]])])

  it('macros and links to other books are never looked at', async () => {
    const parts = [
      ...prices,
      part('xl/vbaProject.bin', 'macro'),
      part('xl/externalLinks/externalLink1.xml', '<!DOCTYPE x [<!ENTITY a "b">]><x>&a;</x>'),
    ]
    const { rows } = await heardAsDetected(fileOf('macros.xlsm', packedZip(parts)))
    expect(rows.map(({ code }) => code)).toEqual(['A1'])
  })

  it('swell: a part that says how large it is', async () => {
    const parts = [
      ...prices,
      part('xl/sharedStrings.xml', Buffer.alloc(priceFileLimits.unpackedBytes + 1, 32)),
    ]
    const bomb = packedZip(parts)
    expect(bomb.length).toBeLessThan(1024 * 1024)
    const problem = refused(await detectReading(fileOf('swells.xlsx', bomb)))
    expect(problem).toMatchObject({ code: 'refused' })
    expect(problem.message).toBe(
      '"swells.xlsx" swells to more than 192 MB when it is unpacked; no price list does. It was not opened.',
    )
  })

  it('swell: a part that lies about how large it is', async () => {
    const parts = [
      ...prices,
      { ...part('xl/sharedStrings.xml', Buffer.alloc(8 * 1024 * 1024, 32)), says: 1000 },
    ]
    const problem = refused(await detectReading(fileOf('lies.xlsx', packedZip(parts))))
    expect(problem.message).toContain('"lies.xlsx" is a damaged workbook')
  })

  it('have thousands of parts', async () => {
    const many = Array.from({ length: priceFileLimits.workbookParts }, (_, at) =>
      part(`xl/media/${at}.png`, 'x'),
    )
    const problem = refused(await detectReading(fileOf('parts.xlsx', packedZip([...prices, ...many]))))
    expect(problem.message).toContain('has more than 2000 parts')
  })

  it.each(['XFD100000', 'ALM1', 'J1000001', 'A99999999', 'A1e9', 'A0x7fffffff', '&#65;9', 'xfd1'])(
    'have a cell so far out that the empty ones fill the memory: %s',
    async (far) => {
      const cells = `${rowsXml([headings, ['A1', 'Elbow', 1.5]])}<row r="3"><c x=">" r="${far}"><v>1</v></c></row>`
      const problem = refused(await detectReading(fileOf('far.xlsx', workbook([{ name: 'Prices', cells }]))))
      expect(problem).toMatchObject({ code: 'refused' })
      expect(problem.message).toContain(
        `The sheet "Prices" reaches to cell ${far}: 1000 columns and 10,000,000 cells`,
      )
    },
  )

  it('have such a cell under a prefix', async () => {
    const cells = `<row r="1"><c x:r="XFD100000" xmlns:x="urn:x"><v>1</v></c></row>`
    const problem = refused(await detectReading(fileOf('far.xlsx', workbook([{ name: 'Prices', cells }]))))
    expect(problem.message).toContain('reaches to cell XFD100000')
  })

  it('have a row so far down', async () => {
    const cells = `${rowsXml([headings])}<row r="1e8"><c><v>1</v></c></row>`
    const problem = refused(await detectReading(fileOf('down.xlsx', workbook([{ name: 'Prices', cells }]))))
    expect(problem.message).toContain('reaches to cell 1e8')
  })

  it('a last column of 1000 and a stray cell far down are still read', async () => {
    const cells = `${rowsXml([headings, ['A1', 'Elbow', 1.5]])}<row r="3"><c r="ALL3"><v>1</v></c></row><row r="9000"><c r="B9000"><v>1</v></c></row>`
    const { rows, rejected } = await heardAsDetected(
      fileOf('stray.xlsx', workbook([{ name: 'Prices', cells }])),
    )
    expect(rows).toHaveLength(1)
    expect(rejected.map(({ rowNo }) => rowNo)).toEqual([3, 9000])
  })

  it('merge the same cells over and over', async () => {
    const list = Array.from({ length: 2000 }, (_, at) => [`A${at}`, 'Elbow', 1.5])
    const after = `<mergeCells count="1000">${'<mergeCell ref="D2:D2001"/>'.repeat(1000)}</mergeCells>`
    const cells = rowsXml([[...headings, 'Group'], ['A', 'Elbow', 1.5, 'EF'], ...list])
    const { rows } = await heardAsDetected(
      fileOf('merged.xlsx', workbook([{ name: 'Prices', cells, after }])),
    )
    expect(rows).toHaveLength(2001)
    expect(rows[1999]?.group).toBe('EF')
  })

  it('define entities in a sheet', async () => {
    const parts = prices.map((one) =>
      one.name === 'xl/workbook.xml'
        ? part(one.name, one.bytes.toString().replace('?>', '?><!DOCTYPE workbook [<!ENTITY a "b">]>'))
        : one,
    )
    const problem = refused(await detectReading(fileOf('entities.xlsx', packedZip(parts))))
    expect(problem.message).toContain('carries a document type')
  })

  it('be cut off', async () => {
    const whole = packedZip(prices)
    const problem = refused(await detectReading(fileOf('cut.xlsx', whole.subarray(0, whole.length - 30))))
    expect(problem.message).toContain('"cut.xlsx" is a damaged workbook')
  })

  it.each([
    ['word/document.xml', 'a text document'],
    ['content.xml', 'an OpenDocument file'],
    ['xl/workbook.bin', 'is a binary workbook (.xlsb)'],
    ['prices.csv', 'a zip of other files'],
  ])('be something else: %s', async (name, says) => {
    expect(refused(await detectReading(fileOf('else.xlsx', packedZip([part(name, 'x')])))).message).toContain(
      says,
    )
  })

  it('have a sheet that is no XML', async () => {
    const parts = prices.map((one) =>
      one.name.endsWith('sheet1.xml') ? part(one.name, '<worksheet><sheetData><row>') : one,
    )
    const answer = await lookAtFile(fileOf('torn.xlsx', packedZip(parts)))
    expect(refused(answer).message).toContain('torn.xlsx')
  })
})

describe('the figures of a sheet', () => {
  it.each([
    ['12.340000000000002', '12.34'],
    ['0.30000000000000004', '0.3'],
    ['5E-2', '0.05'],
    ['1.5E-7', '0.00000015'],
    ['5012345678900', '5012345678900'],
    ['1E+21', '1000000000000000000000'],
    ['-3.50', '-3.50'],
    ['0', '0'],
  ])('%s is %s', (text, figures) => {
    expect(plainFigures(text)).toBe(figures)
  })

  it('columns are named by letters', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(letters)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'])
  })
})
