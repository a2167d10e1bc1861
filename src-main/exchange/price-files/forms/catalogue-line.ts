import type { FileReading } from '../../../domain/price-list.ts'

/** Price breaks of one line that are read. */
const mostBreaks = 20

/** The cells that a line of a catalogue is laid out in, so that it is read like a row of any other list. */
export const lineColumns: FileReading['columns'] = [
  ...(['code', 'name', 'gtin', 'price', 'pricePer', 'packHolds', 'validFrom', 'validTo'] as const).map(
    (meaning, at) => ({ at, meaning }),
  ),
  ...Array.from({ length: mostBreaks }, (_, pair) => [
    { at: 8 + pair * 2, meaning: 'breakFromPacks' as const },
    { at: 9 + pair * 2, meaning: 'breakPrice' as const },
  ]).flat(),
]

/** How a catalogue is read: its form says it all. */
export const catalogueReading: FileReading = {
  form: 'ublCatalogue',
  headerRow: 0,
  decimal: 'point',
  dates: 'yearFirst',
  columns: [],
}

/** One price of a line, from as many of what is ordered. */
export type LinePrice = {
  amount: string
  base: string
  baseUnit: string
  least: string
  from: string
  to: string
}

/** What a line says, by the place in it; empty is not said. */
export type CatalogueLine = {
  action: string
  code: string
  name: string
  description: string
  gtin: string
  packQuantity: string
  packSize: string
  orderableUnit: string
  from: string
  to: string
  readonly prices: LinePrice[]
}

export function emptyLine(): CatalogueLine {
  const said = { action: '', code: '', name: '', description: '', gtin: '', from: '', to: '' }
  return { ...said, packQuantity: '', packSize: '', orderableUnit: '', prices: [] }
}

export const emptyPrice = (): LinePrice => ({
  amount: '',
  base: '',
  baseUnit: '',
  least: '',
  from: '',
  to: '',
})

/** Kinds of package (UN/ECE Recommendation 21): a price per one of them is a pack's. From memory: PK, BX, BG, CT, RO, PA. */
const packages = /^(?:X?(?:PK|BX|BG|CT|RO|PA))$/i

/**
 * A line as cells. Without a base quantity, or with one in packages or in the unit that is ordered, the price is for
 * the pack; otherwise it is for that many units, and the pack costs as many times it as it holds.
 */
export function lineCells(
  line: CatalogueLine,
  whole: { readonly from: string; readonly to: string },
): readonly string[] {
  const isBreak = ({ least }: LinePrice) => Number(least) > 1
  const first = line.prices.find((price) => !isBreak(price)) ?? emptyPrice()
  const breaks = line.prices.filter(isBreak).slice(0, mostBreaks)
  return [
    line.code,
    line.name === '' ? line.description : line.name,
    line.gtin,
    first.amount,
    perOf(line, first),
    holdsOf(line),
    first.from || line.from || whole.from,
    first.to || line.to || whole.to,
    ...breaks.flatMap(({ least, amount }) => [least.replace(/\.0+$/, ''), amount]),
  ]
}

function perOf({ orderableUnit }: CatalogueLine, { base, baseUnit }: LinePrice): string {
  if (base === '') return 'pack'
  const isPack = packages.test(baseUnit) || (baseUnit !== '' && baseUnit === orderableUnit)
  return isPack && Number(base) === 1 ? 'pack' : base
}

/** Units in the item, times items in the pack; each is one when it is not said. */
function holdsOf({ packQuantity, packSize }: CatalogueLine): string {
  if (packQuantity === '' || Number(packQuantity) === 1) return packSize
  if (packSize === '' || Number(packSize) === 1) return packQuantity
  return String(Number(packQuantity) * Number(packSize))
}
