import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { ColumnMeaning, FileReading, ListRow } from '../../domain/price-list.ts'
import { unguarded } from '../price-export/guarded-text.ts'
import { hasGtinShape, isGtin } from './values/gtin.ts'
import { isListRow } from './values/list-row-check.ts'
import { one, packInWords, readPackHolds, readPricePer } from './values/pack-in-words.ts'
import { isExact, packPence } from './values/pack-price.ts'
import { breakPlacesOf, checkBreakColumns, orderedBreaks, readFromPacks } from './values/price-breaks.ts'
import type { BreakPlace } from './values/price-breaks.ts'
import { remembered } from './values/remembered.ts'
import { asNumber } from './values/written-number.ts'
import type { WrittenNumber } from './values/written-number.ts'
import { readDay } from './values/written-day.ts'
import { readPrice, short } from './values/written-price.ts'

/** A row understood, or the sentence that says why it was not. `note` is told of what is kept in spite of a flaw. */
export type RowReader = (cells: readonly string[], note: (says: string) => void) => ListRow | string

type At = Readonly<Partial<Record<ColumnMeaning, number>>>
/** What is worked out once for all rows of a file. */
type Plan = {
  readonly at: At
  readonly breaks: readonly BreakPlace[]
  readonly reading: FileReading
  readonly readDay: (text: string) => ReturnType<typeof readDay>
  readonly readHolds: (text: string) => WrittenNumber | null
  readonly readPer: (text: string) => number | 'pack' | null
  readonly groupKey: (text: string) => string | undefined
}
type Note = (says: string) => void
type Read<T> = T | string

const mostPence = 100_000_000
const mostHolds = 100_000
/** What a spreadsheet makes of a long number when it shows it short: the figures are lost. '0E00' may be a code. */
const scientific = /^\d(?:[.,]\d+)?E\+\d{2,3}$/i

/** What a spreadsheet leaves where a formula has failed. */
const sheetError = /^#(?:N\/A|REF!|NAME\?|VALUE!|DIV\/0!|NUM!|NULL!|SPILL!|ERROR)$/

/** A reader of rows for one way of reading, or why that way cannot be. */
export function rowReaderOf(reading: FileReading): Outcome<RowReader> {
  const wrong = wrongColumns(reading)
  if (!wrong.ok) return wrong
  const plan: Plan = {
    at: placesOf(reading),
    breaks: breakPlacesOf(reading),
    reading,
    readDay: remembered((text) => readDay(text, reading.dates)),
    readHolds: remembered((text) => readPackHolds(text, reading.decimal)),
    readPer: remembered(readPricePer),
    groupKey: remembered(groupKey),
  }
  return accept((cells, note) => readRow(plan, cells, note))
}

function wrongColumns({ columns }: FileReading): Outcome<null> {
  const has = (meaning: ColumnMeaning) => columns.some((column) => column.meaning === meaning)
  const path = 'reading.columns'
  if (!has('price'))
    return refuse('invalid', 'No column is said to hold the price: choose the one that does.', path)
  if (!has('code'))
    return refuse('invalid', "No column is said to hold the supplier's code: choose the one that does.", path)
  const twice = columns.find(({ at, meaning }, index) =>
    columns.some(
      (other, before) =>
        before < index && (other.at === at || (other.meaning === meaning && !isBreak(meaning))),
    ),
  )
  if (twice !== undefined)
    return refuse(
      'invalid',
      `Column ${twice.at + 1} is chosen twice, or two columns are said to hold the same: choose one.`,
      path,
    )
  return checkBreakColumns(columns)
}

const isBreak = (meaning: ColumnMeaning) => meaning === 'breakFromPacks' || meaning === 'breakPrice'

function placesOf({ columns }: FileReading): At {
  return Object.fromEntries(
    columns.filter(({ meaning }) => !isBreak(meaning)).map(({ at, meaning }) => [meaning, at]),
  )
}

const cellAt = (cells: readonly string[], at: number | undefined) =>
  at === undefined ? '' : (cells[at] ?? '').trim()

/** A text without the apostrophe that keeps it from being run as a formula; a workbook needs none and has none. */
function textAt({ reading }: Plan, cells: readonly string[], at: number | undefined): string {
  const text = cellAt(cells, at)
  return reading.form === 'text' ? unguarded(text) : text
}

function readRow(plan: Plan, cells: readonly string[], note: Note): Read<ListRow> {
  const { at } = plan
  const code = readCode(textAt(plan, cells, at.code))
  if (typeof code !== 'string') return code.fault
  const name = readName(textAt(plan, cells, at.name), note)
  const written = cellAt(cells, at.price)
  if (written === '') return 'The row has no price.'
  const unit = cellAt(cells, at.unit)
  const holds = holdsOf(plan, { cell: cellAt(cells, at.packHolds), unit, name })
  if (typeof holds === 'string') return holds
  const per = perOf(plan, cellAt(cells, at.pricePer), unit)
  if (typeof per === 'string') return per
  const pence = penceOf(written, { holds, per, plan, note })
  if (typeof pence === 'string') return pence
  const breaks = breaksOf(cells, pence, { holds, per, plan, note })
  if (typeof breaks === 'string') return breaks
  const row: Draft = { code, name, packHolds: asNumber(holds), packPence: pence }
  if (breaks.length > 0) row.breaks = breaks
  const wrong = addRest(plan, row, { cells, note })
  if (wrong !== undefined) return wrong
  return isListRow(row) ? row : 'The row holds a figure or a text outside what a price list may hold.'
}

function readCode(code: string): string | { readonly fault: string } {
  if (code === '') return { fault: 'The row has no code.' }
  if (sheetError.test(code)) return { fault: `The code is a spreadsheet's error, "${code}".` }
  if (code.length > 200) return { fault: `The code has ${code.length} characters; 200 are the most.` }
  if (scientific.test(code))
    return {
      fault: `A spreadsheet has shortened the code to "${code}": its figures are lost. Ask for the list with codes as text.`,
    }
  return code
}

function readName(text: string, note: Note): string {
  const even = isUneven(text) ? text.replaceAll(/\s+/g, ' ') : text
  if (even.length <= 200) return even
  note(`The description has ${even.length} characters; the first 200 are kept.`)
  return even.slice(0, 200).trim()
}

/** Two spaces together, or a white space that is none of the plain ones. Asked of every row, so it goes by characters. */
function isUneven(text: string): boolean {
  let before = 0
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at)
    if (char < 32 || (char === 32 && before === 32) || (char >= 0xa0 && /\s/.test(text.charAt(at))))
      return true
    before = char
  }
  return false
}

type PackCells = { readonly cell: string; readonly unit: string; readonly name: string }

/** What the pack holds: its own column; without one, the words of the unit and then of the description, if certain. */
function holdsOf({ at, readHolds }: Plan, { cell, unit, name }: PackCells): Read<WrittenNumber> {
  if (at.packHolds === undefined) return (unit === '' ? null : packInWords(unit)) ?? packInWords(name) ?? one
  const holds = readHolds(cell)
  if (holds === null) return `The pack size "${short(cell)}" is not a number of units.`
  const size = asNumber(holds)
  if (size === 0) return 'The pack holds nothing: a pack size must be above 0.'
  return size > mostHolds
    ? `The pack size "${short(cell)}" is over ${mostHolds.toLocaleString('en-GB')}.`
    : holds
}

/** How many units the price is for; null when it is for the pack. */
function perOf({ at, reading, readPer }: Plan, cell: string, unit: string): Read<number | null> {
  const standing = reading.pricePerUnit === true ? 1 : null
  if (at.pricePer !== undefined && cell !== '') {
    const per = readPer(cell)
    if (per === null)
      return `What the price is for, "${short(cell)}", is not understood: a number of units, "each" or "pack" is.`
    return per === 'pack' ? null : per
  }
  const counted = /^(?:per\s+|\/\s*)\d/i.test(unit) ? readPer(unit) : null
  return typeof counted === 'number' ? counted : standing
}

type Pricing = {
  readonly holds: WrittenNumber
  readonly per: number | null
  readonly plan: Plan
  readonly note: Note
}

function penceOf(written: string, { holds, per, plan, note }: Pricing): Read<number> {
  const price = readPrice(written, plan.reading.decimal)
  if (typeof price === 'string') return price
  if (price.per === 0) return `The price "${short(written)}" is for nought units.`
  if (price.foreign !== undefined) note(`The price carries ${price.foreign}; the figure is taken as pounds.`)
  const priced = { amount: price.amount, per: price.per ?? per, holds }
  const pence = packPence(priced)
  if (pence > mostPence)
    return `The price "${short(written)}" makes a pack over 1,000,000.00: that is past all sense.`
  if (pence === 0 && price.amount.digits > 0)
    return `The price "${short(written)}" makes a pack of less than half a penny: is a pack size missing?`
  if (pence === 0) note('The price is nought, as written.')
  if (!isExact(priced)) note('The price is finer than a penny: the pack’s price is rounded, half a penny up.')
  return pence
}

function breaksOf(
  cells: readonly string[],
  packPence: number,
  pricing: Pricing,
): Read<NonNullable<ListRow['breaks']>> {
  const { plan, note } = pricing
  if (plan.breaks.length === 0) return []
  const breaks: { readonly fromPacks: number; readonly packPence: number }[] = []
  for (const { from, price, stated } of plan.breaks) {
    const [quantity, written] = [cellAt(cells, from), cellAt(cells, price)]
    if (quantity === '' || written === '') continue
    const fromPacks = stated ?? readFromPacks(quantity)
    if (typeof fromPacks === 'string') return fromPacks
    const pence = penceOf(written, pricing)
    if (typeof pence === 'string') return pence
    if (fromPacks >= 2) breaks.push({ fromPacks, packPence: pence })
    else note(`A price break from ${fromPacks} packs is no break and is left out.`)
  }
  return orderedBreaks(breaks, { packPence, note })
}

type Draft = { -readonly [K in keyof ListRow]: ListRow[K] }
type Cells = { readonly cells: readonly string[]; readonly note: Note }

/** GTIN, group and days; answers with what is wrong with them. */
function addRest(plan: Plan, row: Draft, { cells, note }: Cells): string | undefined {
  const { at } = plan
  const gtin = cellAt(cells, at.gtin)
  if (gtin !== '') addGtin(row, gtin, note)
  const group = cellAt(cells, at.group)
  const known = group === '' ? undefined : plan.groupKey(group)
  if (known !== undefined) row.group = known
  const from = cellAt(cells, at.validFrom)
  const to = cellAt(cells, at.validTo)
  const first = from === '' ? undefined : plan.readDay(from)
  const last = to === '' ? undefined : plan.readDay(to)
  if (typeof first === 'object') return first.fault
  if (typeof last === 'object') return last.fault
  if (first !== undefined) row.validFrom = first
  if (last !== undefined) row.validTo = last
  if (first === undefined || last === undefined || last >= first) return undefined
  return `The price ends on ${last}, before it begins on ${first}.`
}

function addGtin(row: Draft, gtin: string, note: Note): void {
  const figures = /^\d+$/.test(gtin) ? gtin : gtin.replaceAll(/[\s-]/g, '')
  if (isGtin(figures)) row.gtin = figures
  else note(gtinFlaw(figures))
}

function gtinFlaw(figures: string): string {
  if (scientific.test(figures))
    return `A spreadsheet has shortened the GTIN to "${figures}"; the row is kept without it.`
  const why = hasGtinShape(figures) ? 'its check figure is wrong' : 'it must have 8, 12, 13 or 14 figures'
  return `The GTIN "${short(figures)}" is not one: ${why}. The row is kept without it.`
}

/** A group's name as a key: 'Pipe & fittings' is known as 'Pipe-fittings'. */
export function groupKey(text: string): string | undefined {
  const key = text
    .replaceAll(/[^A-Za-z0-9._-]+/g, '-')
    .replace(/^[^A-Za-z0-9]+/, '')
    .slice(0, 80)
    .replace(/-+$/, '')
  return key === '' ? undefined : key
}
