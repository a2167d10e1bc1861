import { appendFileSync, mkdirSync, rmSync, statSync, utimesSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { detectReading } from '../../../../src-main/exchange/price-files/detect-reading.ts'
import { priceFileLimits } from '../../../../src-main/exchange/price-files/limits.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { readRows } from '../../../../src-main/exchange/price-files/read-rows.ts'
import { answered, refused } from '../../../answered.ts'
import { fileOf, heardAsDetected, heardOf, plainReading } from './read-for-tests.ts'

const heading = 'Code,Description,Price\n'
const rowsFrom = (count: number) =>
  Array.from({ length: count }, (_, at) => `A${at},Elbow ${at},${at}.50\n`).join('')
const silent = { row: () => undefined, rejected: () => undefined }

describe('an encoding that is wrongly chosen', () => {
  const pounds = `${heading}A1,Elbow,£1.50\nA2,Café tee,£2.50\n`

  it('Windows-1252 read as UTF-8 is refused by the first byte that does not fit', async () => {
    const { answer } = await heardOf(fileOf('1252.csv', Buffer.from(pounds, 'latin1')), plainReading)
    expect(refused(answer)).toMatchObject({ code: 'invalid', path: 'reading.encoding' })
    expect(refused(answer).message).toContain('"1252.csv" is not UTF-8')
    expect(refused(answer).message).toContain('probably Windows-1252')
  })

  it('UTF-8 read as Windows-1252 is refused, though every byte would be a letter', async () => {
    const { answer } = await heardOf(fileOf('utf8.csv', pounds), {
      ...plainReading,
      encoding: 'windows-1252',
    })
    expect(refused(answer).message).toContain(
      'was to be read as Windows-1252 (Western European), but it is UTF-8: choose that encoding.',
    )
  })

  it('UTF-8 read as Windows-1252 where a letter lies across two pieces of the file', async () => {
    // 262,144 bytes are read at once; the pound sign's two bytes lie on both sides of that.
    const before = `${heading}${'A1,Elbow,1.50\n'.repeat(18_722)}`
    const across = `${before}${'x'.repeat(262_143 - before.length)}£,Tee,2.50\n`
    expect(Buffer.from(across)[262_143]).toBe(0xc2)
    const { answer } = await heardOf(fileOf('across.csv', across), {
      ...plainReading,
      encoding: 'windows-1252',
    })
    expect(refused(answer).message).toContain('but it is UTF-8')
    const asItIs = await heardOf(fileOf('across.csv', across), plainReading)
    expect(asItIs.rows.at(-1)?.code).toMatch(/^x+£$/)
  })

  it('plain text is the same in both', async () => {
    const { rows } = await heardOf(fileOf('plain.csv', `${heading}A1,Elbow,1.50\n`), {
      ...plainReading,
      encoding: 'windows-1252',
    })
    expect(rows).toHaveLength(1)
  })

  it.each(['utf-16le', 'utf-16be'] as const)('UTF-8 read as %s is refused', async (encoding) => {
    const { answer } = await heardOf(fileOf('narrow.csv', `${heading}A1,Elbow,1.50\n`), {
      ...plainReading,
      encoding,
    })
    expect(refused(answer).message).toContain('but it is UTF-8')
  })

  it('UTF-16 read as UTF-8 is refused', async () => {
    const wide = Buffer.from(`\uFEFF${heading}A1,Elbow,1.50\n`, 'utf16le')
    const { answer } = await heardOf(fileOf('wide.csv', wide), plainReading)
    expect(refused(answer).message).toContain('but it is UTF-16, low byte first')
  })
})

describe('quotation marks', () => {
  it('left open at the end are refused by the row that opens them', async () => {
    const { answer } = await heardOf(
      fileOf('open.csv', `${heading}A1,"Elbow,1.50\nA2,Tee,2.50\n`),
      plainReading,
    )
    expect(refused(answer).message).toContain(
      'Row 2 of "open.csv" opens a quotation mark that is never closed',
    )
  })

  it('left open in a long file are refused before the file is held in memory', async () => {
    const long = `${heading}A1,"Elbow,1.50\n${rowsFrom(400_000)}`
    expect(long.length).toBeGreaterThan(priceFileLimits.rowChars)
    const { answer, rows } = await heardOf(fileOf('long.csv', long), plainReading)
    expect(refused(answer)).toMatchObject({ code: 'refused' })
    expect(refused(answer).message).toContain(
      'Row 2 of "long.csv" goes on for more than 4,000,000 characters',
    )
    expect(rows).toEqual([])
  })

  it('that stand inside a quoted cell undoubled reject the row', async () => {
    const { rejected, rows } = await heardOf(
      fileOf('inside.csv', `${heading}A1,"Bend 1/2" BSP",1.50\nA2,Tee,2.50\nA3,"1/2"" tee",3.50\n`),
      plainReading,
    )
    expect(rejected.map(({ rowNo }) => rowNo)).toEqual([2])
    expect(rejected[0]?.says).toContain('A quotation mark stands where none may')
    expect(rows.map(({ name }) => name)).toEqual(['Tee', '1/2" tee'])
  })

  it('for inches in an unquoted cell are text', async () => {
    const { rows } = await heardOf(fileOf('inches.csv', `${heading}A1,Bend 1/2",1.50\n`), plainReading)
    expect(rows[0]?.name).toBe('Bend 1/2"')
  })
})

describe('sizes', () => {
  it('ten megabytes in one cell are refused', async () => {
    const { answer } = await heardOf(
      fileOf('cell.csv', `${heading}A1,${'x'.repeat(10_000_000)},1.50\n`),
      plainReading,
    )
    expect(refused(answer)).toMatchObject({ code: 'refused' })
    expect(refused(answer).message).toContain('goes on for more than 4,000,000 characters')
  })

  it('a cell over 100,000 characters rejects its row, one of 100,000 does not', async () => {
    const two = `${heading}A1,${'x'.repeat(100_001)},1.50\nA2,${'y'.repeat(100_000)},2.50\n`
    const { rejected, rows, notes } = await heardOf(fileOf('cells.csv', two), plainReading)
    expect(rejected.map(({ rowNo, says, text }) => [rowNo, says, text.length])).toEqual([
      [2, 'A cell has more than 100,000 characters, so it is no entry of a price list.', 200],
    ])
    expect(rows.map(({ rowNo, name }) => [rowNo, name.length])).toEqual([[3, 200]])
    expect(notes).toEqual(['3: The description has 100000 characters; the first 200 are kept.'])
  })

  it('a row of more than a thousand cells is rejected', async () => {
    const { rejected } = await heardOf(
      fileOf('wide.csv', `${heading}A1,Elbow,1.50${',x'.repeat(998)}\n`),
      plainReading,
    )
    expect(rejected[0]?.says).toBe('The row has 1001 cells; 1000 are the most that are read.')
  })

  it('a file over the limit is refused before a byte is read', async () => {
    const source = fileOf('vast.csv', '')
    const { truncate } = await import('node:fs/promises')
    await truncate(source.path, priceFileLimits.textBytes + 1)
    expect(refused(await detectReading(source)).message).toBe(
      '"vast.csv" has 513 MB; a price file may have 512 MB at most.',
    )
  })
})

describe('the file itself', () => {
  it('that is not there is refused', async () => {
    const problem = refused(
      await detectReading({ path: `${fileOf('there.csv', 'x').path}.gone`, name: 'gone.csv' }),
    )
    expect(problem).toMatchObject({
      code: 'not-found',
      message: expect.stringContaining('"gone.csv" is not there'),
    })
  })

  it('that is a folder is refused', async () => {
    const path = `${fileOf('beside.csv', 'x').path}.folder`
    mkdirSync(path)
    const problem = refused(await detectReading({ path, name: 'prices' }))
    expect(problem.message).toContain('"prices" is a folder or a device, not a file')
  })

  it('that vanishes while it is read is refused', async () => {
    const source = fileOf('vanishing.csv', heading + rowsFrom(50))
    const answer = await readRows(source, plainReading, {
      ...silent,
      row: (rowNo) => {
        if (rowNo === 2) rmSync(source.path)
      },
    })
    expect(refused(answer)).toMatchObject({
      code: 'not-found',
      message: '"vanishing.csv" vanished while it was being read.',
    })
  })

  it('that grows while it is read is refused', async () => {
    const source = fileOf('growing.csv', heading + rowsFrom(50))
    const answer = await readRows(source, plainReading, {
      ...silent,
      row: (rowNo) => {
        if (rowNo === 2) appendFileSync(source.path, 'B1,Late,1.00\n')
      },
    })
    expect(refused(answer)).toMatchObject({ code: 'conflict' })
    expect(refused(answer).message).toContain('"growing.csv" changed while it was being read')
  })

  it('that is written over at the same size while it is read is refused', async () => {
    const source = fileOf('touched.csv', heading + rowsFrom(50))
    const { size } = statSync(source.path)
    const answer = await readRows(source, plainReading, {
      ...silent,
      row: (rowNo) => {
        if (rowNo === 2) utimesSync(source.path, 1, 1)
      },
    })
    expect(statSync(source.path).size).toBe(size)
    expect(refused(answer)).toMatchObject({ code: 'conflict' })
  })

  it.each([
    ['%PDF-1.7\n', 'is a PDF'],
    ['\x1f\x8b\x08', 'is a packed file (gzip)'],
    ['\x89PNG\r\n', 'is a picture'],
    ['PK\x05\x06', 'is an empty zip'],
  ])('that begins as another kind of file is refused: %s', async (begins, says) => {
    const source = fileOf('other.csv', Buffer.from(`${begins}........`, 'latin1'))
    expect(refused(await lookAtFile(source)).message).toContain(says)
  })

  it('of nothing but white space is refused', async () => {
    const { answer } = await heardAsDetected(fileOf('blank.csv', '\n\n   \n'))
    expect(refused(answer).message).toContain('No column is said to hold the price')
    expect(refused(await lookAtFile(fileOf('blank.csv', '\n\n   \n'))).message).toContain(
      'has no row that holds anything',
    )
  })

  it('of another form than was said is refused', async () => {
    const { answer } = await heardOf(fileOf('text.csv', heading), { ...plainReading, form: 'sheet' })
    expect(refused(answer).message).toContain('is a text file (CSV), not a workbook (.xlsx) as was said')
  })
})

describe('columns that cannot be', () => {
  const source = () => fileOf('columns.csv', `${heading}A1,Elbow,1.50\n`)
  const withColumns = (columns: typeof plainReading.columns) =>
    heardOf(source(), { ...plainReading, columns })

  it('no code, one column twice, one meaning twice, half a pair', async () => {
    const says = async (columns: typeof plainReading.columns) =>
      refused((await withColumns(columns)).answer).message
    const price = { at: 2, meaning: 'price' } as const
    const code = { at: 0, meaning: 'code' } as const
    expect(await says([price])).toContain("No column is said to hold the supplier's code")
    expect(await says([code, price, { at: 0, meaning: 'name' }])).toContain('Column 1 is chosen twice')
    expect(await says([code, price, { at: 1, meaning: 'price' }])).toContain(
      'two columns are said to hold the same',
    )
    expect(await says([code, price, { at: 1, meaning: 'breakPrice' }])).toContain(
      'Price breaks come in pairs',
    )
  })

  it('that lie beyond the row read as empty', async () => {
    const { rejected } = await withColumns([
      { at: 0, meaning: 'code' },
      { at: 9, meaning: 'price' },
    ])
    expect(rejected.map(({ says }) => says)).toEqual(['The row has no price.'])
  })
})

describe('codes', () => {
  it('that a spreadsheet has shortened are rejected, others with an E in them are kept', async () => {
    const codes = ['5.01E+12', '5E+12', '5,01E+12', '0E00', '5E12', '12E+05', 'E+12', '#N/A', '#12']
    const file = fileOf('codes.csv', heading + codes.map((code) => `"${code}",Elbow,1.50\n`).join(''))
    const { rows, rejected } = await heardOf(file, plainReading)
    expect(rejected.map(({ rowNo }) => rowNo)).toEqual([2, 3, 4, 9])
    expect(rows.map(({ code }) => code)).toEqual(['0E00', '5E12', '12E+05', 'E+12', '#12'])
  })
})

describe('hearing', () => {
  it('hands over each row as it stands first, and leaves a skipped one at that', async () => {
    const raw: (readonly string[])[] = []
    const rows: string[] = []
    const answer = await readRows(
      fileOf('hear.csv', `${heading}A1, Elbow ,1.50\nA2,Tee,none\nA3,Cap,3.50\n`),
      plainReading,
      {
        raw: (rowNo, cells) => {
          raw.push([String(rowNo), ...cells])
          return cells[0] === 'A2' ? 'skip' : 'read'
        },
        row: (_, { code }) => rows.push(code),
        rejected: ({ says }) => rows.push(says),
      },
    )
    expect(raw).toEqual([
      ['2', 'A1', ' Elbow ', '1.50'],
      ['3', 'A2', 'Tee', 'none'],
      ['4', 'A3', 'Cap', '3.50'],
    ])
    expect(rows).toEqual(['A1', 'A3'])
    expect(answered(answer).rows).toBe(3)
  })

  it('lets what goes wrong in the hearer through', async () => {
    const broken = Object.assign(new Error('The hearer broke'), { code: 'SQLITE_FULL' })
    const read = readRows(fileOf('hear.csv', `${heading}A1,Elbow,1.50\n`), plainReading, {
      ...silent,
      row: () => {
        throw broken
      },
    })
    await expect(read).rejects.toBe(broken)
  })

  it('hears every row of a long file once, wherever the pieces of it end', async () => {
    const count = 30_000
    const name = (at: number) => (at % 3 === 0 ? `Té "${at}", é${'x'.repeat(at % 17)}` : `Tee ${at}`)
    const text = Array.from(
      { length: count },
      (_, at) => `A${at},"${name(at).replaceAll('"', '""')}\r\nend",${at}.50\r\n`,
    )
    const { rows } = await heardOf(fileOf('pieces.csv', heading + text.join('')), plainReading)
    expect(rows.map(({ code, name: read, packPence }) => `${code} ${read} ${packPence}`)).toEqual(
      Array.from({ length: count }, (_, at) => `A${at} ${name(at)} end ${at * 100 + 50}`),
    )
  })

  it('tells the share that is done, and stops when asked', async () => {
    const source = fileOf('stop.csv', heading + rowsFrom(60_000))
    const done: number[] = []
    answered(await readRows(source, plainReading, { ...silent, progress: (ratio) => done.push(ratio) > 0 }))
    expect(done.length).toBeGreaterThan(3)
    expect(done.at(-1)).toBe(1)
    expect(done).toEqual(done.toSorted((a, b) => a - b))
    let heard = 0
    const stopped = await readRows(source, plainReading, {
      ...silent,
      row: () => {
        heard += 1
      },
      progress: (ratio) => ratio < 0.5,
    })
    expect(refused(stopped)).toMatchObject({
      code: 'refused',
      message: 'Reading "stop.csv" was stopped before its end.',
    })
    expect(heard).toBeLessThan(60_000)
  })
})
