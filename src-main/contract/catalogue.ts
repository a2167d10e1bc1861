import { z } from 'zod'
import { item, itemKind } from '../domain/item.ts'
import { supplier, supplierPrice } from '../domain/price.ts'
import { setting, taskMinutes, fixing } from '../domain/figures.ts'
import { day, key, line, list, pricePence, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

export const catalogueSearch = query('catalogue.search', {
  doc: 'Items whose name, code or other words hold every word of the text, the nearest first.',
  input: record({
    text: z.string().trim().max(200),
    kind: z.enum([...itemKind.options, 'emitter']).optional(),
    most: z.int().gte(1).lte(1000).optional(),
  }),
  output: record({
    items: list(record({ item, fromPence: pricePence.nullable() }), 1000),
    found: z.int(),
  }),
})

export const catalogueItem = query('catalogue.item', {
  doc: 'One item with every price asked for it today.',
  input: record({ itemId: key }),
  output: record({ item, prices: list(record({ supplier, price: supplierPrice })) }),
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
