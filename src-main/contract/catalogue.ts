import { z } from 'zod'
import { item, itemKind } from '../domain/item.ts'
import { supplier, supplierPrice } from '../domain/price.ts'
import { setting, taskMinutes, fixing } from '../domain/figures.ts'
import { keptRow } from '../domain/price-list.ts'
import { day, key, line, list, pricePence, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

const anyKind = z.enum([...itemKind.options, 'emitter'])

const netPrice = record({
  packHolds: z.number(),
  packPence: pricePence,
  validFrom: day,
  validTo: day.optional(),
})

/** A job that puts an item up, buys it, or fills a gap with it. */
const usingJob = record({ jobId: key, title: line })

export const catalogueSearch = query('catalogue.search', {
  doc: 'Items whose name, code or other words hold every word of the text, the nearest first.',
  input: record({
    text: z.string().trim().max(200),
    kind: anyKind.optional(),
    most: z.int().gte(1).lte(1000).optional(),
    /** True for retired items only; without it they are left out. */
    retired: z.boolean().optional(),
    favourite: z.boolean().optional(),
    /** True for generic figures only, false for those of a maker's list or the firm's own. */
    generic: z.boolean().optional(),
    /** How many of the nearest to pass over: the place from which the answer goes on. */
    from: z.int().gte(0).lte(1_000_000).optional(),
  }),
  output: record({
    items: list(record({ item, fromPence: pricePence.nullable(), favourite: z.boolean().optional() }), 1000),
    found: z.int(),
  }),
})

export const catalogueItem = query('catalogue.item', {
  doc: 'One item with every price asked for it today, what was asked before, and the jobs that use it.',
  input: record({ itemId: key }),
  output: record({
    item,
    prices: list(
      record({
        supplier,
        price: supplierPrice,
        /** True when it began longer ago than the firm's limit; `staleSays` says so in words. */
        stale: z.boolean().optional(),
        staleSays: z.string().optional(),
      }),
    ),
    favourite: z.boolean().optional(),
    /** True when the firm made or changed it, so that no later edition touches it. */
    own: z.boolean().optional(),
    /** The jobs that put it up; of a part, those that would buy it, of the 50 saved last. */
    usedBy: list(usingJob).optional(),
    /** What a pack cost, costs or is to cost, after discounts, by supplier and code, the oldest first. */
    history: list(
      record({ supplierId: key, supplierName: line, code: line, prices: list(netPrice) }),
    ).optional(),
  }),
})

export const itemSave = command('item.save', {
  doc: 'Keeps an item of the catalogue, new or changed; a figure changed by the firm is no longer generic.',
  needs: 'data',
  input: record({ item }),
  output: record({ item, isNew: z.boolean() }),
})

export const itemCopy = command('item.copy', {
  doc: "Makes a copy of an item as one of the firm's own, under another name, with no prices yet.",
  needs: 'data',
  input: record({ itemId: key, newItemId: key.optional(), name: line }),
  output: record({ item }),
})

export const itemRetire = command('item.retire', {
  doc: 'Takes an item off the shelf, or puts it back; it is never deleted. The answer names the jobs that use it.',
  needs: 'data',
  input: record({ itemId: key, retired: z.boolean() }),
  output: record({ item, usedBy: list(usingJob) }),
})

export const favouriteSet = command('favourite.set', {
  doc: 'Marks an item as the one to take where several are the same thing, or takes the mark off; its equals lose theirs.',
  needs: 'data',
  input: record({ itemId: key, favourite: z.boolean() }),
  output: record({
    itemId: key,
    favourite: z.boolean(),
    /** The item of the same kind and figures that was the favourite before. */
    insteadOf: key.optional(),
  }),
})

export const favouriteList = query('favourite.list', {
  doc: 'Every favourite, by name.',
  needs: 'data',
  input: record({}),
  output: record({ items: list(item, 100_000) }),
})

export const rowMakeItem = command('row.makeItem', {
  doc: "Makes an item of the firm's own from a supplier's row that is linked to none, and links the row to it.",
  needs: 'data',
  input: record({
    rowNo: z.int(),
    item,
    /** How much of the item's unit a pack holds; when absent, what the row's pack holds. */
    itemHolds: z.number().gt(0).lte(100_000).optional(),
  }),
  output: record({ item, row: keptRow }),
})

export const catalogueExport = command('catalogue.export', {
  doc: 'Writes the catalogue as CSV or XLSX: every item, or what a search finds, with its figures and its lowest price today.',
  needs: 'data',
  input: record({
    form: z.enum(['csv', 'xlsx']),
    kind: anyKind.optional(),
    /** As the search takes them; with any of them retired items are in it only where they are asked for. */
    text: z.string().trim().max(200).optional(),
    favourite: z.boolean().optional(),
    retired: z.boolean().optional(),
    /** Only what this supplier has a price for, at that price. */
    supplierId: key.optional(),
    out: z.string().min(1).max(4000).optional(),
  }),
  output: record({ path: z.string(), rows: z.int(), bytes: z.int() }),
})

export const priceSet = command('price.set', {
  doc: 'Sets what a supplier asks for a pack of an item from a day on; what was asked before is kept.',
  needs: 'data',
  input: record({
    itemId: key,
    supplierId: key,
    code: line.optional(),
    packHolds: z.number().gt(0).lte(100_000),
    packPence: pricePence,
    validFrom: day.optional(),
  }),
  output: record({ price: supplierPrice, before: supplierPrice.nullable() }),
})

export const figuresList = query('figures.list', {
  doc: 'Every figure the rules use, with its unit, range and source.',
  input: record({}),
  output: record({ settings: list(setting), tasks: list(taskMinutes), fixings: list(fixing) }),
})

export const appAbout = query('app.about', {
  doc: 'Which version this is and where its data lie.',
  input: record({}),
  output: record({ version: z.string(), dataFolder: z.string().nullable(), today: day }),
})
