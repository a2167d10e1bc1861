import { z } from 'zod'
import { itemKind, unit } from '../item.ts'
import { bar } from '../quote.ts'
import { count, day, key, line, list, note, pence, record } from '../schema.ts'
import { tool } from '../take-off.ts'

/** Why something goes into or out of the van. */
export const vanMoveKind = z.enum(['receipt', 'use', 'return', 'count', 'correction'])
export type VanMoveKind = z.infer<typeof vanMoveKind>

export const vanItem = record({
  itemId: key,
  name: line,
  kind: itemKind,
  unit,
  quantity: z.number(),
  /** The day of the last move. */
  since: day,
})
export type VanItem = z.infer<typeof vanItem>

export const vanMove = record({
  kind: vanMoveKind,
  /** What it added to the van; less than nothing when taken out. */
  quantity: z.number(),
  /** What a count found. */
  counted: z.number().optional(),
  /** What was in the van afterwards. */
  after: z.number(),
  onDay: day,
  at: z.string(),
  says: note.optional(),
  pickingNo: count.optional(),
  orderId: key.optional(),
})
export type VanMove = z.infer<typeof vanMove>

/** One thing to pick for the van, from the van itself, an emitter's box, or a supplier. */
export const pickingLine = record({
  lineNo: count,
  source: z.enum(['van', 'box', 'supplier']),
  supplierId: key.optional(),
  supplierName: line.optional(),
  kind: line,
  itemId: key.optional(),
  code: line.optional(),
  name: line,
  unit: line,
  need: z.number(),
  packs: count.optional(),
  packHolds: z.number().optional(),
  picked: z.number(),
  tickedAt: z.string().optional(),
  insteadItemId: key.optional(),
  insteadSays: line.optional(),
  shortSays: note.optional(),
})
export type PickingLine = z.infer<typeof pickingLine>

/** What a round of picking carries besides its lines, as it was worked out. */
export const pickingBody = record({
  quotes: list(record({ quoteId: key, title: line, customerName: line })),
  tools: list(tool),
  pipeCuts: list(record({ name: line, bars: list(bar) })),
  lifts: list(record({ quoteId: key, name: line, massKg: z.number(), says: z.string() })),
  cautions: list(z.string()),
  missing: list(z.string()),
  /** What each supplier's order costs before tax, and its carriage where the split reckoned with it. */
  orders: list(
    record({
      supplierId: key,
      name: line,
      goodsPence: pence,
      carriagePence: pence.optional(),
      /** What a pack of each line costs, and how much of the line the jobs need, in its unit. */
      packs: list(record({ lineNo: count, packPence: pence, need: z.number() })).optional(),
    }),
  ),
  says: z.string(),
})
export type PickingBody = z.infer<typeof pickingBody>

export const picking = record({
  pickingNo: count,
  title: line,
  madeOn: day,
  closedOn: day.optional(),
  lines: list(pickingLine),
  body: pickingBody,
})
export type Picking = z.infer<typeof picking>
