import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { VanMoveKind } from '../../domain/follow-up/van.ts'
import { addMove, readVanMoves, readVanStock } from '../../store/van/van-stock.ts'
import type { VanItemMoves } from '../../store/van/van-stock.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const vanStock: UseCase<'van.stock'> = async (_, desk) =>
  accept({ items: await reading(storeOf(desk), readVanStock) })

export const vanMoves: UseCase<'van.moves'> = async ({ itemId }, desk) => {
  const found = await reading(storeOf(desk), (tx) => readVanMoves(tx, itemId))
  return found === null ? noSuchItem(itemId) : accept(found)
}

export const vanNote: UseCase<'van.note'> = ({ itemId, kind, quantity, onDay = null, says }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const item = await readVanMoves(tx, itemId)
    if (item === null) return noSuchItem(itemId)
    const day = onDay ?? desk.today
    if (day > desk.today)
      return refuse('invalid', `${day} is still to come; give a day up to today.`, 'onDay')
    const change = changeOf(item, { kind, quantity, says })
    if (!change.ok) return change
    const counted = kind === 'count' ? { counted: quantity } : {}
    await addMove(tx, { itemId, kind, quantity: change.value, ...counted, onDay: day, at: desk.now(), says })
    const now = await readVanMoves(tx, itemId)
    return accept({ itemId, quantity: now?.quantity ?? 0 })
  })

type Note = { readonly kind: VanMoveKind; readonly quantity: number; readonly says: string | undefined }

/** What a move adds to the van; refused where the van would hold less than nothing. */
function changeOf(item: VanItemMoves, { kind, quantity, says }: Note): Outcome<number> {
  const { name, unit, quantity: held } = item
  const isNothing = Math.abs(quantity) < 1e-6
  if (kind === 'correction') {
    if (isNothing) return refuse('invalid', 'A correction adds something or takes it away.', 'quantity')
    if ((says ?? '').trim() === '') return refuse('invalid', 'Say why the number is corrected.', 'says')
  } else if (quantity < 0 || (isNothing && kind !== 'count')) {
    const message = `A ${kind} is of more than nothing; ${kind === 'use' ? 'what is used goes out by itself' : 'what goes out is a use'}.`
    return refuse('invalid', message, 'quantity')
  }
  const change = kind === 'use' ? -quantity : kind === 'count' ? quantity - held : quantity
  if (held + change < -1e-9) {
    const of = (quantity: number) => (unit === 'each' ? `${quantity}` : `${quantity} ${unit}`)
    const has = held === 0 ? 'none' : of(held)
    const message = `The van has ${has} of ${name}, so ${of(Math.abs(change))} can’t go out of it.`
    return refuse('impossible', message, 'quantity', 'Count what is there, and note the count first.')
  }
  return accept(change)
}

function noSuchItem(itemId: string): Outcome<never> {
  return refuse(
    'not-found',
    `The catalogue has no item called ${itemId}.`,
    'itemId',
    'Only items of the catalogue are kept account of.',
  )
}
