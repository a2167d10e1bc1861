import { z } from 'zod'
import { basisPoints, count, day, key, line, list, optionalLine, pricePence, record } from './schema.ts'

/** What a column of a supplier's file holds, in the words of the person who reads the file. */
export const columnMeaning = z.enum([
  'code',
  'name',
  'gtin',
  'packHolds',
  'price',
  'pricePer',
  'unit',
  'group',
  'breakFromPacks',
  'breakPrice',
  'validFrom',
  'validTo',
])
export type ColumnMeaning = z.infer<typeof columnMeaning>

/** How a supplier's file is to be read: detected, shown, changeable, and kept for the next file of that supplier. */
export const fileReading = record({
  form: z.enum(['text', 'sheet', 'ublCatalogue']),
  /** Of a text file. */
  encoding: z.enum(['utf-8', 'windows-1252', 'utf-16le', 'utf-16be']).optional(),
  delimiter: z.enum([',', ';', '\t', '|']).optional(),
  /** Of a workbook: the sheet's name. */
  sheet: line.optional(),
  /** Which row holds the headings, counted from 1; 0 when there are none. */
  headerRow: count.lte(1000),
  decimal: z.enum(['point', 'comma']),
  dates: z.enum(['dayFirst', 'monthFirst', 'yearFirst']),
  /**
   * Columns are counted from 0. Several columns may be price breaks: in pairs, a column of quantities and one of prices, or a
   * column of prices alone whose quantity its heading states ("10+"): that is its `fromPacks`.
   */
  columns: list(
    record({
      at: count.lte(1000),
      meaning: columnMeaning,
      fromPacks: count.gte(2).lte(100_000).optional(),
    }),
    60,
  ),
  /** True when the file's prices are for one unit and a pack costs that times what it holds. */
  pricePerUnit: z.boolean().optional(),
})
export type FileReading = z.infer<typeof fileReading>

export const priceBreak = record({ fromPacks: count.gte(2), packPence: pricePence })

/** One row of a supplier's file, understood. */
export const listRow = record({
  code: line,
  name: optionalLine,
  /** Global Trade Item Number: 8, 12, 13 or 14 figures with a right check figure. */
  gtin: z
    .string()
    .regex(/^(\d{8}|\d{12,14})$/)
    .optional(),
  packHolds: z.number().gt(0).lte(100_000),
  /** For a pack, before the discount of its group and before tax. */
  packPence: pricePence,
  breaks: list(priceBreak, 20).optional(),
  group: key.optional(),
  validFrom: day.optional(),
  validTo: day.optional(),
})
export type ListRow = z.infer<typeof listRow>

/** A row that could not be taken, and why. `rowNo` is counted from 1 in the file. */
export const rejectedRow = record({ rowNo: z.int(), text: z.string(), says: z.string() })
export type RejectedRow = z.infer<typeof rejectedRow>

/** A row of a supplier's list as it is kept. */
export const keptRow = record({
  rowNo: z.int(),
  supplierId: key,
  code: line,
  name: optionalLine,
  gtin: z.string().optional(),
  packHolds: z.number(),
  /** On the list, and after the discount of the row's group; both for a pack. */
  listPence: pricePence,
  netPence: pricePence,
  breaks: list(priceBreak, 20).optional(),
  group: key.optional(),
  discountBasisPoints: basisPoints.optional(),
  validFrom: day,
  validTo: day.optional(),
  /** The day of the supplier's last list that still had it, when that is later than the day its price began. */
  confirmedOn: day.optional(),
  /** The catalogue's item that it is, and how much of the item's unit a pack holds. */
  itemId: key.optional(),
  itemName: line.optional(),
  itemHolds: z.number().optional(),
  /** The day of the file in which it was first missing. */
  goneFrom: day.optional(),
  /** True when the price began, and was last confirmed, longer ago than the firm's limit. */
  stale: z.boolean(),
})
export type KeptRow = z.infer<typeof keptRow>

/** A price that a row had, or has, or is to have. */
export const pastPrice = record({
  packHolds: z.number(),
  listPence: pricePence,
  validFrom: day,
  validTo: day.optional(),
})
export type PastPrice = z.infer<typeof pastPrice>

/** The percentage that a supplier takes off a group of goods, from a day on. */
export const discountGroup = record({
  supplierId: key,
  group: key,
  name: optionalLine,
  basisPoints: basisPoints.lte(10_000),
  validFrom: day,
})
export type DiscountGroup = z.infer<typeof discountGroup>

/** How many rows of each kind a file would bring. */
export const changeCounts = record({
  new: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  missing: z.int(),
  rejected: z.int(),
  duplicated: z.int(),
})
export type ChangeCounts = z.infer<typeof changeCounts>

/** One thing done to prices: it is listed, and can be undone. */
export const priceChange = record({
  changeNo: z.int(),
  kind: z.enum(['file', 'bulk', 'single', 'link']),
  supplierId: key.optional(),
  /** The file's name, or what was done, in words. */
  says: line,
  at: z.string(),
  counts: changeCounts,
  undone: z.boolean(),
})
export type PriceChange = z.infer<typeof priceChange>
