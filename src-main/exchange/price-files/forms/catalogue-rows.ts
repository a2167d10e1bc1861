import type { SaxesTagNS } from 'saxes'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'
import { emptyLine, emptyPrice, lineCells } from './catalogue-line.ts'
import type { CatalogueLine, LinePrice } from './catalogue-line.ts'
import type { OpenFile } from './open-file.ts'
import type { RowsHeard, RowsHearer } from './rows-hearer.ts'
import { encodingOf } from './text-encoding.ts'
import type { Encoding } from './text-encoding.ts'
import { textPieces } from './text-pieces.ts'
import { longCell } from './text-rows.ts'
import { xmlFeed } from './xml-events.ts'

const catalogueNamespace = 'urn:oasis:names:specification:ubl:schema:xsd:Catalogue-2'
/** What is wrong with a line that the supplier takes back. */
export const deletedLine = 'The supplier marks this line as deleted.'
/** The firm's currency, and the only one that is read. */
const currency = 'GBP'

/** What is under way while a catalogue goes by. */
type Reading = {
  readonly path: string[]
  readonly name: string
  readonly hear: RowsHearer
  rowNo: number
  stopped: boolean
  wrong: Outcome<never> | undefined
  line: CatalogueLine | undefined
  price: LinePrice | undefined
  unit: string
  readonly whole: { from: string; to: string }
}

/** Every line of a UBL 2.1 catalogue, as the cells of `lineColumns`. Lines are counted from 1. */
export async function catalogueRows(file: OpenFile, hear: RowsHearer): Promise<Outcome<RowsHeard>> {
  const reading: Reading = {
    path: [],
    name: file.name,
    hear,
    rowNo: 0,
    stopped: false,
    wrong: undefined,
    line: undefined,
    price: undefined,
    unit: '',
    whole: { from: '', to: '' },
  }
  const feed = await xmlFeed(file.name, {
    open: (tag) => opened(reading, tag),
    close: (_, text) => closed(reading, text.trim()),
  })
  const encoding = declaredEncoding(file.head) ?? (await encodingOf(file))
  const pieces = textPieces(file, encoding, (ratio) => {
    reading.stopped ||= !hear.part(ratio)
    return !reading.stopped
  })
  for await (const text of pieces.texts) {
    const wrong = feed.feed(text) ?? reading.wrong
    if (wrong !== undefined) return wrong
    if (reading.stopped) break
  }
  if (!reading.stopped) {
    const wrong = pieces.wrong() ?? feed.end() ?? reading.wrong
    if (wrong !== undefined) return wrong
  }
  return accept({ fileHash: pieces.hash() })
}

/** An XML file may say that it is in a Western European encoding of one byte a letter. */
function declaredEncoding(head: Buffer): Encoding | undefined {
  const says = /^<\?xml[^>]*\sencoding=["']([\w-]+)["']/.exec(head.toString('latin1', 0, 200))?.[1]
  return says !== undefined && /^(?:iso-8859-1|windows-1252|latin1)$/i.test(says) ? 'windows-1252' : undefined
}

function opened(reading: Reading, tag: SaxesTagNS): void {
  const { path } = reading
  const { local } = tag
  if (path.length === 0 && (local !== 'Catalogue' || tag.uri !== catalogueNamespace))
    reading.wrong ??= refuse(
      'invalid',
      `"${reading.name}" is XML, but its outermost element is <${tag.name}>: of XML, only UBL 2.1 catalogues are read.`,
    )
  path.push(local)
  if (local === 'CatalogueLine' && path.length === 2) reading.line = emptyLine()
  if (local === 'RequiredItemLocationQuantity' && path.length === 3) reading.price = emptyPrice()
  if (local === 'PriceAmount') checkCurrency(reading, tag.attributes['currencyID']?.value ?? '')
  reading.unit = tag.attributes['unitCode']?.value ?? ''
}

function checkCurrency(reading: Reading, said: string): void {
  if (said === currency) return
  reading.wrong ??= refuse(
    'invalid',
    `Line ${reading.rowNo + 1} of "${reading.name}" is priced in "${said}"; prices are kept in ${currency}. ` +
      `Ask for the catalogue in ${currency}.`,
  )
}

function closed(reading: Reading, text: string): void {
  const { path, line, whole } = reading
  const place = path.slice(1).join('/')
  path.pop()
  if (line === undefined) {
    if (place === 'ValidityPeriod/StartDate') whole.from = text
    if (place === 'ValidityPeriod/EndDate') whole.to = text
    return
  }
  if (place === 'CatalogueLine') return finished(reading, line)
  keep(reading, line, { inLine: place.slice('CatalogueLine/'.length), text })
  if (place === 'CatalogueLine/RequiredItemLocationQuantity' && reading.price !== undefined) {
    line.prices.push(reading.price)
    reading.price = undefined
  }
}

const ofLine: Readonly<Record<string, Exclude<keyof CatalogueLine, 'prices'>>> = {
  ActionCode: 'action',
  OrderableUnit: 'orderableUnit',
  'LineValidityPeriod/StartDate': 'from',
  'LineValidityPeriod/EndDate': 'to',
  'Item/SellersItemIdentification/ID': 'code',
  'Item/Name': 'name',
  'Item/Description': 'description',
  'Item/StandardItemIdentification/ID': 'gtin',
  'Item/PackQuantity': 'packQuantity',
  'Item/PackSizeNumeric': 'packSize',
}
const ofPrice: Readonly<Record<string, Exclude<keyof LinePrice, 'baseUnit'>>> = {
  MinimumQuantity: 'least',
  'Price/PriceAmount': 'amount',
  'Price/BaseQuantity': 'base',
  'Price/ValidityPeriod/StartDate': 'from',
  'Price/ValidityPeriod/EndDate': 'to',
}

type Said = { readonly inLine: string; readonly text: string }

/** The first of several wins: of descriptions, say. */
function keep({ price, unit }: Reading, line: CatalogueLine, { inLine, text }: Said): void {
  const field = ofLine[inLine]
  if (field !== undefined && line[field] === '') line[field] = text
  const inPrice = ofPrice[inLine.replace(/^RequiredItemLocationQuantity\//, '')]
  if (price === undefined || inPrice === undefined || price[inPrice] !== '') return
  price[inPrice] = text
  if (inPrice === 'base') price.baseUnit = unit
}

function finished(reading: Reading, line: CatalogueLine): void {
  reading.line = undefined
  reading.rowNo += 1
  if (reading.stopped || reading.wrong !== undefined) return
  const cells = lineCells(line, reading.whole)
  reading.stopped = !reading.hear.row(reading.rowNo, cells, faultOf(line, cells))
}

function faultOf({ action }: CatalogueLine, cells: readonly string[]): string | undefined {
  if (/^delete/i.test(action)) return deletedLine
  return cells.some(({ length }) => length > priceFileLimits.cellChars) ? longCell : undefined
}
