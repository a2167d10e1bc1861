import { posix } from 'node:path'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { DecimalMark } from '../values/written-number.ts'
import { fillMerged } from './merged-cells.ts'
import { cellForms } from './cell-forms.ts'
import { checkExtent } from './sheet-extent.ts'
import { storedZip } from './stored-zip.ts'
import type { WorkbookParts } from './workbook-parts.ts'
import { xmlFeed } from './xml-events.ts'

/** A number as the sheet holds it, in figures with a point. */
export type SheetNumber = { readonly figures: string }
export type SheetCell = string | SheetNumber | null
export type Sheet = { readonly name: string; readonly path: string }

/** The sheets of a workbook, in its order. */
export async function sheetsOf(parts: WorkbookParts, name: string): Promise<Outcome<readonly Sheet[]>> {
  const targets = new Map<string, string>()
  const named: { readonly name: string; readonly relation: string }[] = []
  const book = await read(parts, 'xl/workbook.xml', (local, attributes) => {
    if (local !== 'sheet') return
    const relation = Object.values(attributes).find((one) => one.local === 'id')
    named.push({ name: attributes['name']?.value ?? '', relation: relation?.value ?? '' })
  })
  const relations = await read(parts, 'xl/_rels/workbook.xml.rels', (local, attributes) => {
    if (local === 'Relationship' && (attributes['Type']?.value ?? '').endsWith('/worksheet'))
      targets.set(attributes['Id']?.value ?? '', attributes['Target']?.value ?? '')
  })
  if (book !== undefined || relations !== undefined) return book ?? relations ?? noSheet(name)
  const sheets = named.flatMap(({ name: sheet, relation }) => {
    const target = targets.get(relation)
    if (target === undefined) return []
    const path = target.startsWith('/') ? target.slice(1) : posix.join('xl', target)
    return parts.has(path) ? [{ name: sheet, path }] : []
  })
  return sheets.length === 0 ? noSheet(name) : accept(sheets)
}

const noSheet = (name: string) => refuse('invalid', `"${name}" is a workbook without a sheet of cells.`)

type Attributes = Readonly<Record<string, { readonly local: string; readonly value: string }>>

async function read(
  parts: WorkbookParts,
  part: string,
  open: (local: string, attributes: Attributes) => void,
): Promise<Outcome<never> | undefined> {
  const feed = await xmlFeed(part, {
    open: ({ local, attributes }) => open(local, attributes),
    close: () => undefined,
  })
  return feed.feed((parts.get(part) ?? Buffer.alloc(0)).toString('utf8')) ?? feed.end()
}

/** The cells of one sheet: values only, a formula's being the one that was last worked out. */
export async function sheetCells(
  parts: WorkbookParts,
  { name, path }: Sheet,
  bookName: string,
): Promise<Outcome<readonly (readonly SheetCell[])[]>> {
  const { readSheet } = await import('read-excel-file/node')
  const needed = new Map([...parts].filter(([part]) => !part.startsWith('xl/worksheets/') || part === path))
  const extent = checkExtent((parts.get(path) ?? Buffer.alloc(0)).toString('latin1'), name)
  if (!extent.ok) return extent
  const { figures, errors } = await cellForms(parts, path)
  try {
    const rows = await readSheet<SheetNumber>(storedZip(needed), name, {
      trim: false,
      parseNumber: (text) => ({ figures: plainFigures(text) }),
    })
    const isPlain = figures.size === 0 && errors.size === 0
    const cells = rows.map((row, index) =>
      row.map((cell, at) => {
        if (isPlain) return cellOf(cell, undefined)
        const name = `${letters(at)}${index + 1}`
        return errors.has(name) ? errorText : cellOf(cell, figures.get(name))
      }),
    )
    return accept(fillMerged(cells, parts.get(path) ?? Buffer.alloc(0)))
  } catch (error) {
    if (!(error instanceof Error) || error instanceof ReferenceError) throw error
    const says = error.message.replace(/\.$/, '').slice(0, 160)
    return refuse(
      'invalid',
      `The sheet "${name}" of "${bookName}" cannot be read (${says}). Save it again as .xlsx, or as CSV.`,
    )
  }
}

/** Stands where a formula came to an error, so that the cell is not taken for an empty one. */
const errorText = '#ERROR'

function cellOf(cell: unknown, width: number | undefined): SheetCell {
  if (cell === null || cell === undefined) return null
  if (typeof cell === 'string') return cell
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE'
  if (cell instanceof Date) return cell.toISOString().slice(0, 10)
  const { figures } = cell as SheetNumber
  return width !== undefined && /^\d+$/.test(figures) ? figures.padStart(width, '0') : { figures }
}

/**
 * A sheet's number in plain figures, to the fifteen that a spreadsheet shows: 12.340000000000002 is 12.34, and 5E-2
 * is 0.05.
 */
export function plainFigures(text: string): string {
  if (text.length <= 15 && !/[^\d.-]/.test(text)) return text
  const number = Number(Number(text).toPrecision(15))
  if (!Number.isFinite(number)) return text
  const written = String(number)
  if (!written.includes('e')) return written
  return Math.abs(number) >= 1 ? BigInt(Math.round(number)).toString() : number.toFixed(20).replace(/0+$/, '')
}

/** A cell as text, its number's decimals marked the way that the file's texts mark them. */
export function cellText(cell: SheetCell, decimal: DecimalMark): string {
  if (cell === null) return ''
  if (typeof cell === 'string') return cell
  return decimal === 'point' ? cell.figures : cell.figures.replace('.', ',')
}

/** The name of a column: 0 is A, 26 is AA. */
export function letters(at: number): string {
  const last = String.fromCharCode(65 + (at % 26))
  return at < 26 ? last : letters(Math.floor(at / 26) - 1) + last
}
