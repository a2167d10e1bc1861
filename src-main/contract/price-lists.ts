import { z } from 'zod'
import {
  changeCounts,
  discountGroup,
  fileReading,
  keptRow,
  pastPrice,
  priceBreak,
  priceChange,
  rejectedRow,
} from '../domain/price-list.ts'
import { supplier } from '../domain/price.ts'
import { count, day, key, line, list, optionalLine, pence, pricePence, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

/** A file that came through the window, or, at the terminal only, one named by its path. */
export const fileRef = z.union([record({ fileId: key }), record({ path: z.string().min(1).max(4000) })])

/** A name that the asker gives to long work, by which it is watched and stopped. */
const workId = key.optional()

export const fileKeep = command('file.keep', {
  doc: 'Hands a file over piece by piece; the answer names it. Kept for a day in the data folder.',
  needs: 'data',
  input: record({ fileId: key.optional(), name: line, offset: z.int().gte(0), base64: z.string() }),
  output: record({ fileId: key, bytes: z.int() }),
})

export const workProgress = query('work.progress', {
  doc: 'How far long work has come: what it is doing, and the share done when that is known.',
  input: record({ workId: key }),
  output: record({ running: z.boolean(), says: z.string(), done: z.number().gte(0).lte(1).nullable() }),
})

export const workCancel = command('work.cancel', {
  doc: 'Stops long work. Nothing that it did is left behind.',
  input: record({ workId: key }),
  output: record({ stopped: z.boolean() }),
})

export const priceFileLook = query('priceFile.look', {
  doc: 'How a price file would be read: detected form, encoding, headings, columns proposed, and its first rows.',
  input: record({ file: fileRef, supplierId: key.optional(), reading: fileReading.optional() }),
  output: record({
    name: line,
    bytes: z.int(),
    reading: fileReading,
    /** True when the reading was kept from this supplier's last file. */
    remembered: z.boolean(),
    sheets: list(line).optional(),
    headings: list(z.string()),
    /** The first rows as they stand, from the file's first on. */
    raw: list(list(z.string())),
    /** The same as understood: prices in pence, packs as numbers. */
    understood: list(
      record({
        rowNo: z.int(),
        code: z.string(),
        name: z.string(),
        packHolds: z.number(),
        packPence: pricePence,
        breaks: list(priceBreak, 20).optional(),
      }),
    ),
    rejected: list(rejectedRow),
    /** What a person should know before going on. */
    notes: list(z.string()).optional(),
  }),
})

/** True when the file is only a part of the supplier's list: then no row counts as missing. */
const part = z.boolean().optional()

/** What changes at one row. */
export const rowChange = record({
  code: line,
  name: optionalLine,
  wasPence: pricePence.nullable(),
  willPence: pricePence.nullable(),
  /** The rise (or fall) as hundredths of a percent; absent for a new or missing row, or where the pack's size changed. */
  risesBasisPoints: z.int().optional(),
  wasHolds: z.number().optional(),
  willHolds: z.number().optional(),
  itemId: key.optional(),
  /** The price breaks before and after, where they change; a row that had or has none says an empty list. */
  wasBreaks: list(priceBreak, 20).optional(),
  willBreaks: list(priceBreak, 20).optional(),
})
export type RowChange = z.infer<typeof rowChange>

const compared = {
  counts: changeCounts,
  /** The biggest rises first, then the biggest falls. */
  changed: list(rowChange),
  added: list(rowChange),
  missing: list(rowChange),
  rejected: list(rejectedRow),
  duplicated: list(record({ code: line, rowNos: list(z.int()), says: z.string() })),
  /** What open quotes and jobs cost us now and would cost after, before tax. */
  openWork: list(record({ jobId: key, title: line, wasPence: pence, willPence: pence })),
}

export const priceFileCompare = query('priceFile.compare', {
  doc: 'What a price file would change, in money, without changing anything.',
  needs: 'data',
  input: record({
    file: fileRef,
    supplierId: key,
    reading: fileReading,
    validFrom: day.optional(),
    part,
    /** How many rows of each kind to spell out. */
    most: count.lte(1000).optional(),
    workId,
  }),
  output: record({
    fileHash: z.string(),
    ...compared,
    /** What is taken in spite of a flaw, for a person to look at: what is said, of how many rows, and the first of them. */
    cautions: list(record({ says: z.string(), rows: z.int(), rowNos: list(z.int()) })).optional(),
    /** Rows that look like an item of the catalogue, for a person to confirm. */
    suggested: list(
      record({ code: line, name: optionalLine, itemId: key, itemName: line, because: z.string() }),
    ),
  }),
})

export const priceFileApply = command('priceFile.apply', {
  doc: 'Takes a compared price file into the price list in one transaction; it can be undone.',
  needs: 'data',
  input: record({
    file: fileRef,
    /** From the comparison: a file that has changed since is refused. */
    fileHash: z.string(),
    supplierId: key,
    reading: fileReading,
    validFrom: day.optional(),
    part,
    links: list(record({ code: line, itemId: key, itemHolds: z.number().gt(0).optional() })).optional(),
    workId,
  }),
  output: record({ changeNo: z.int().nullable(), counts: changeCounts }),
})

export const priceChanges = query('price.changes', {
  doc: 'What was done to the prices, the newest first.',
  needs: 'data',
  input: record({ most: count.lte(1000).optional() }),
  output: record({ changes: list(priceChange) }),
})

export const priceUndo = command('price.undo', {
  doc: 'Undoes one change to the prices: every row is exactly as it was before.',
  needs: 'data',
  input: record({ changeNo: z.int() }),
  output: record({ counts: changeCounts }),
})

export const priceListSearch = query('priceList.search', {
  doc: "Rows of suppliers' lists that hold every word of the text, ranked; a window of them from one place on.",
  needs: 'data',
  input: record({
    text: z.string().trim().max(200),
    supplierId: key.optional(),
    group: key.optional(),
    linked: z.boolean().optional(),
    stale: z.boolean().optional(),
    sort: z.enum(['nearest', 'code', 'name', 'price']).optional(),
    from: count.lte(10_000_000).optional(),
    most: count.lte(500).optional(),
  }),
  output: record({
    rows: list(keptRow),
    found: z.int(),
    /** True when there are more hits than were counted. */
    atLeast: z.boolean(),
  }),
})

export const priceListRow = query('priceList.row', {
  doc: "One row of a supplier's list with every price that it had or is to have.",
  needs: 'data',
  input: record({ rowNo: z.int() }),
  output: record({ row: keptRow, prices: list(pastPrice) }),
})

export const priceListLink = command('priceList.link', {
  doc: "Says which item of the catalogue a supplier's row is, or that it is none.",
  needs: 'data',
  input: record({
    rowNo: z.int(),
    itemId: key.nullable(),
    itemHolds: z.number().gt(0).lte(100_000).optional(),
  }),
  output: record({ row: keptRow }),
})

export const priceListSetPrice = command('priceList.setPrice', {
  doc: "Sets the list price of a row's pack from a day on, whether or not the row is an item; it can be undone.",
  needs: 'data',
  input: record({
    rowNo: z.int(),
    /** On the supplier's list, before the discount of the row's group. */
    listPence: pricePence,
    /** The price breaks from then on; those it has when absent. */
    breaks: list(priceBreak, 20).optional(),
    validFrom: day.optional(),
  }),
  output: record({
    row: keptRow,
    /** Null when the price was that already. */
    changeNo: z.int().nullable(),
    /** What a person should look at: a price break that is dearer than the price. */
    cautions: list(z.string()),
  }),
})

/** Which rows a bulk change or an export takes. */
export const whichRows = record({
  supplierId: key.optional(),
  group: key.optional(),
  text: z.string().trim().max(200).optional(),
  rowNos: list(z.int()).optional(),
  /** Rows that are an item of the catalogue, or that are none. */
  linked: z.boolean().optional(),
  /** Rows whose prices are old, or are not. */
  stale: z.boolean().optional(),
})

export const bulkChange = record({
  change: z.discriminatedUnion('kind', [
    record({ kind: z.literal('percent'), basisPoints: z.int().gte(-10_000).lte(100_000) }),
    record({ kind: z.literal('amount'), pence: z.int().gte(-1_000_000_00).lte(1_000_000_00) }),
  ]),
  rounding: record({
    toPence: z.union([z.literal(1), z.literal(5), z.literal(10), z.literal(50), z.literal(100)]),
    rule: z.enum(['nearest', 'up', 'down']),
  }),
})

const bulkInput = { which: whichRows, ...bulkChange.unwrap().shape, validFrom: day.optional(), workId }

export const priceBulkCompare = query('price.bulkCompare', {
  doc: 'What a change of many prices at once would do, without doing it.',
  needs: 'data',
  input: record(bulkInput),
  output: record({ counts: changeCounts, changed: compared.changed, openWork: compared.openWork }),
})

export const priceBulkApply = command('price.bulkApply', {
  doc: 'Changes many prices at once, by a percentage or an amount, in one transaction; it can be undone.',
  needs: 'data',
  input: record(bulkInput),
  output: record({ changeNo: z.int().nullable(), counts: changeCounts }),
})

export const priceExport = command('price.export', {
  doc: "Writes a supplier's price list, or chosen rows of all, as CSV or XLSX, with its columns named so that it can be read in again.",
  needs: 'data',
  input: record({
    form: z.enum(['csv', 'xlsx']),
    which: whichRows,
    out: z.string().max(4000).optional(),
  }),
  output: record({ path: z.string(), rows: z.int(), bytes: z.int() }),
})

export const supplierList = query('supplier.list', {
  doc: 'Every supplier, with how many rows its list has, and its discount groups.',
  needs: 'data',
  input: record({}),
  output: record({
    suppliers: list(
      record({
        supplier,
        rows: z.int(),
        newest: day.nullable(),
        groups: list(discountGroup),
        own: z.boolean(),
      }),
    ),
  }),
})

export const supplierSave = command('supplier.save', {
  doc: 'Keeps a supplier, new or changed.',
  needs: 'data',
  input: record({ supplier }),
  output: record({ supplier }),
})

export const discountGroupSave = command('discountGroup.save', {
  doc: 'Sets the percentage that a supplier takes off a group of goods from a day on; what held before is kept.',
  needs: 'data',
  input: record({ group: discountGroup }),
  output: record({ groups: list(discountGroup) }),
})

export type BulkRounding = z.infer<typeof bulkChange>['rounding']
