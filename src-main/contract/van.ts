import { z } from 'zod'
import { unit } from '../domain/item.ts'
import { count, day, key, line, list, note, record } from '../domain/schema.ts'
import { picking, pickingLine, vanItem, vanMove, vanMoveKind } from '../domain/follow-up/van.ts'
import { command, query } from './request.ts'

const quantity = z.number().gte(-1_000_000).lte(1_000_000)

export const vanStock = query('van.stock', {
  doc: 'What is in the van today, in each item’s unit; nothing that is used up.',
  needs: 'data',
  input: record({}),
  output: record({ items: list(vanItem) }),
})

export const vanMoves = query('van.moves', {
  doc: 'Every move of one item into and out of the van, in order, with what was there after each.',
  needs: 'data',
  input: record({ itemId: key }),
  output: record({ itemId: key, name: line, unit, quantity: z.number(), moves: list(vanMove) }),
})

export const vanNote = command('van.note', {
  doc: 'Writes a move down: a receipt, a use, a return, a count (what was found) or a correction (more or less, with a reason).',
  needs: 'data',
  input: record({
    itemId: key,
    kind: vanMoveKind,
    /** More than 0 for a receipt, a use and a return; what was found for a count; either sign for a correction. */
    quantity,
    onDay: day.optional(),
    says: note.optional(),
  }),
  output: record({ itemId: key, quantity: z.number() }),
})

export const pickingMake = command('picking.make', {
  doc: 'Makes one pick list for accepted quotes together: the van first, then by supplier, bought at today’s prices.',
  needs: 'data',
  input: record({
    quoteIds: list(key, 50, 1),
    title: line.optional(),
    by: z.enum(['cheapestEach', 'cheapestSplit']).optional(),
  }),
  output: record({ picking }),
})

export const pickingList = query('picking.list', {
  doc: 'Rounds of picking, the newest first, with how much of each is ticked off.',
  needs: 'data',
  input: record({}),
  output: record({
    pickings: list(
      record({
        pickingNo: count,
        title: line,
        madeOn: day,
        closedOn: day.optional(),
        quoteIds: list(key),
        lines: count,
        ticked: count,
        short: count,
      }),
    ),
  }),
})

export const pickingRead = query('picking.read', {
  doc: 'One round of picking, whole.',
  needs: 'data',
  input: record({ pickingNo: count }),
  output: record({ picking }),
})

export const pickingTick = command('picking.tick', {
  doc: 'Ticks a line off or takes the tick back; notes how much was found, what was taken instead, and what is short.',
  needs: 'data',
  input: record({
    pickingNo: count,
    lineNo: count,
    /** How much was put into the van; all that is needed when absent. 0 takes the tick back. */
    picked: z.number().gte(0).lte(1_000_000).optional(),
    insteadItemId: key.optional(),
    shortSays: note.optional(),
  }),
  output: record({ line: pickingLine }),
})

export const pickingClose = command('picking.close', {
  doc: 'Closes a round of picking, once each line is ticked or short: what came from the van is booked out of it.',
  needs: 'data',
  input: record({ pickingNo: count, onDay: day.optional() }),
  output: record({ pickingNo: count, closedOn: day, moves: count }),
})
