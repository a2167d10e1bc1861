import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Picking, PickingLine } from '../../domain/follow-up/van.ts'
import { readItems } from '../../store/items.ts'
import { closePicking, listPickings, readPicking, tickLine } from '../../store/van/pickings.ts'
import { addMove, inVanNow } from '../../store/van/van-stock.ts'
import { reading, writing } from '../../store/store.ts'
import type { ReadTx } from '../../store/tables.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const pickingList: UseCase<'picking.list'> = async (_, desk) =>
  accept({ pickings: await reading(storeOf(desk), listPickings) })

export const pickingRead: UseCase<'picking.read'> = async ({ pickingNo }, desk) => {
  const picking = await reading(storeOf(desk), (tx) => readPicking(tx, pickingNo))
  return picking === null ? noSuchPicking(pickingNo) : accept({ picking })
}

export const pickingTick: UseCase<'picking.tick'> = ({ pickingNo, lineNo, ...input }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const open = await openPicking(tx, pickingNo)
    if (!open.ok) return open
    const line = open.value.lines.find((one) => one.lineNo === lineNo)
    if (line === undefined)
      return refuse('not-found', `Pick list ${pickingNo} has no line ${lineNo}.`, 'lineNo')
    const picked = input.picked ?? line.need
    const said = (input.shortSays ?? '').trim()
    const remark = said === '' ? undefined : said
    const short = picked < line.need && picked > 0 ? (remark ?? 'Some are short.') : remark
    const instead = input.insteadItemId
    const [item] = instead === undefined ? [] : await readItems(tx, [instead])
    if (instead !== undefined && item === undefined)
      return refuse('not-found', `The catalogue has no item called ${instead}.`, 'insteadItemId')
    await tickLine(tx, {
      pickingNo,
      lineNo,
      picked,
      tickedAt: picked > 0 || short !== undefined ? desk.now() : null,
      insteadItemId: instead ?? null,
      insteadSays: item?.name.slice(0, 200) ?? null,
      shortSays: short ?? null,
    })
    const after = await readPicking(tx, pickingNo)
    const ticked = after?.lines.find((one) => one.lineNo === lineNo)
    if (ticked === undefined) throw new Error('A line that was just ticked is not there')
    return accept({ line: ticked })
  })

export const pickingClose: UseCase<'picking.close'> = ({ pickingNo, onDay = null }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const open = await openPicking(tx, pickingNo)
    if (!open.ok) return open
    const closedOn = onDay ?? desk.today
    if (closedOn > desk.today || closedOn < open.value.madeOn) {
      const message = `A pick list made on ${open.value.madeOn} is closed on that day or later, up to today.`
      return refuse('invalid', message, 'onDay')
    }
    const waiting = open.value.lines.filter(({ tickedAt }) => tickedAt === undefined)
    if (waiting.length > 0) {
      const names = waiting.slice(0, 3).map(({ name }) => name)
      const message = `${waiting.length === 1 ? 'One line is' : `${waiting.length} lines are`} not ticked off yet: ${names.join('; ')}${waiting.length > 3 ? ' …' : ''}`
      return refuse('conflict', message, 'pickingNo', 'Tick each line, or note it as short.')
    }
    const bookings = open.value.lines.flatMap(bookingOf)
    for (const { itemId, quantity, name } of bookings) {
      const held = await inVanNow(tx, itemId)
      if (held + quantity < -1e-9) {
        const message = `The van has ${held} of ${name}, so ${-quantity} can’t be taken from it.`
        return refuse('conflict', message, undefined, 'Count what is in the van, and note the count first.')
      }
      await addMove(tx, {
        itemId,
        kind: quantity < 0 ? 'use' : 'receipt',
        quantity,
        onDay: closedOn,
        at: desk.now(),
        says: `Pick list ${pickingNo}: ${open.value.title}`.slice(0, 200),
        pickingNo,
      })
    }
    await closePicking(tx, pickingNo, closedOn)
    return accept({ pickingNo, closedOn, moves: bookings.length })
  })

/** What came from the van goes out of it to the job. What was bought goes straight to the job; its leftovers come back after it. */
function bookingOf(line: PickingLine) {
  if (line.source !== 'van' || line.itemId === undefined || line.picked === 0) return []
  const itemId = line.insteadItemId ?? line.itemId
  return [{ itemId, name: line.insteadSays ?? line.name, quantity: -line.picked }]
}

async function openPicking(tx: ReadTx, pickingNo: number): Promise<Outcome<Picking>> {
  const picking = await readPicking(tx, pickingNo)
  if (picking === null) return noSuchPicking(pickingNo)
  if (picking.closedOn === undefined) return accept(picking)
  return refuse('conflict', `Pick list ${pickingNo} was closed on ${picking.closedOn}.`, 'pickingNo')
}

/** What a pick list that is not there is refused with. */
export function noSuchPicking(pickingNo: number): Outcome<never> {
  return refuse(
    'not-found',
    `There is no pick list ${pickingNo}.`,
    'pickingNo',
    '`picking.list` names them all.',
  )
}
