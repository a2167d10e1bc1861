import { Readable } from 'node:stream'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'
import type { OpenFile } from './open-file.ts'
import type { RowsHeard, RowsHearer } from './rows-hearer.ts'
import type { Encoding } from './text-encoding.ts'
import { textPieces } from './text-pieces.ts'

export type TextShape = { readonly encoding: Encoding; readonly delimiter: string }

/** The part of the table reader's answer for one row that is looked at. */
type Step = { readonly data: unknown; readonly errors: readonly { readonly code: string }[] }

/** Every row of a text file, an empty line being a row without cells. Rows are counted from 1. */
export async function textRows(
  file: OpenFile,
  shape: TextShape,
  hear: RowsHearer,
): Promise<Outcome<RowsHeard>> {
  const { default: papa } = await import('papaparse')
  let stopped = false
  let rowNo = 0
  let sinceRow = 0
  let wrong: Outcome<never> | undefined
  const pieces = textPieces(file, shape.encoding, (ratio) => {
    stopped ||= !hear.part(ratio)
    return !stopped && wrong === undefined
  })
  async function* watched(): AsyncGenerator<string, void> {
    for await (const text of pieces.texts) {
      if (stopped || wrong !== undefined) return
      sinceRow += text.length
      if (sinceRow > priceFileLimits.rowChars) wrong = endlessRow(file.name, rowNo + 1)
      else yield text
    }
  }
  const step = ({ data, errors }: Step): boolean => {
    rowNo += 1
    sinceRow = 0
    const cells = data as readonly string[]
    if (errors.some(({ code }) => code === 'MissingQuotes')) wrong ??= openQuote(file.name, rowNo)
    else if (!stopped)
      stopped = !hear.row(rowNo, cells.length === 1 && cells[0] === '' ? [] : cells, faultOf(cells, errors))
    return wrong === undefined && !stopped
  }
  await new Promise<void>((resolve, reject) => {
    papa.parse<readonly string[]>(Readable.from(watched(), { highWaterMark: 1 }), {
      delimiter: shape.delimiter,
      newline: '\n',
      step: (results, parser) => {
        if (!step(results)) parser.abort()
      },
      complete: () => resolve(),
      error: reject,
    })
  })
  const refused = wrong ?? (stopped ? undefined : pieces.wrong())
  return refused ?? accept({ fileHash: pieces.hash() })
}

function faultOf(cells: readonly string[], errors: Step['errors']): string | undefined {
  if (errors.length > 0)
    return 'A quotation mark stands where none may: double the marks inside a cell. Rows after it may have been taken into it.'
  if (cells.length > priceFileLimits.rowCells)
    return `The row has ${cells.length} cells; ${priceFileLimits.rowCells} are the most that are read.`
  return cells.some(({ length }) => length > priceFileLimits.cellChars) ? longCell : undefined
}

export const longCell = `A cell has more than ${priceFileLimits.cellChars.toLocaleString('en-GB')} characters, so it is no entry of a price list.`

function openQuote(name: string, rowNo: number): Outcome<never> {
  return refuse(
    'invalid',
    `Row ${rowNo} of "${name}" opens a quotation mark that is never closed, so nothing after it can be told apart. ` +
      'Close the mark, or double it where it stands for inches.',
  )
}

function endlessRow(name: string, rowNo: number): Outcome<never> {
  return refuse(
    'refused',
    `Row ${rowNo} of "${name}" goes on for more than ${priceFileLimits.rowChars.toLocaleString('en-GB')} characters: ` +
      'a quotation mark is not closed, or the file is no table.',
  )
}
