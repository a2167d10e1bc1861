import type { Item } from '../domain/item.ts'
import { itemOf } from './items.ts'
import type { ReadTx, WriteTx } from './tables.ts'

/** The items that the firm would rather have, by id. */
export async function favouriteIds(tx: ReadTx): Promise<readonly string[]> {
  const rows = await tx.selectFrom('favourite').select('item_id').orderBy('item_id').execute()
  return rows.map(({ item_id }) => item_id)
}

/** The items that the firm would rather have, by name. */
export async function readFavourites(tx: ReadTx): Promise<readonly Item[]> {
  const rows = await tx
    .selectFrom('favourite')
    .innerJoin('item', 'item.item_id', 'favourite.item_id')
    .select(['item.item_id', 'item.body'])
    .orderBy('item.sort_name')
    .orderBy('item.item_id')
    .execute()
  return rows.map(itemOf)
}

/** Which of these items are favourites. */
export async function favouritesAmong(tx: ReadTx, itemIds: readonly string[]): Promise<ReadonlySet<string>> {
  if (itemIds.length === 0) return new Set()
  const rows = await tx.selectFrom('favourite').select('item_id').where('item_id', 'in', itemIds).execute()
  return new Set(rows.map(({ item_id }) => item_id))
}

/** Marks an item as the favourite of its role. One of the same role loses the mark; its id is the answer. */
export async function markFavourite(tx: WriteTx, item: Item): Promise<string | null> {
  const role = roleOf(item)
  const others = (await readFavourites(tx)).filter(
    (other) => other.itemId !== item.itemId && roleOf(other) === role,
  )
  for (const { itemId } of others) await unmarkFavourite(tx, itemId)
  await tx
    .insertInto('favourite')
    .values({ item_id: item.itemId })
    .onConflict((conflict) => conflict.column('item_id').doNothing())
    .execute()
  return others[0]?.itemId ?? null
}

export async function unmarkFavourite(tx: WriteTx, itemId: string): Promise<void> {
  await tx.deleteFrom('favourite').where('item_id', '=', itemId).execute()
}

/** How well a thing does its work is not what it is: two makers' valves of one form are the same thing to a fitter. */
const howWell = new Set(['kvM3PerH', 'allowedShearN', 'allowedPullN', 'treatsLitresPerLitre'])

/** What an item is, as one text: its kind with the figures by which one thing stands in for another. */
export function roleOf(item: Item): string {
  const { kind } = item
  const what: Readonly<Record<string, unknown>> = kind === 'emitter' ? emitterRole(item) : item.spec
  const fields = Object.entries(what).filter(([field, value]) => !howWell.has(field) && value !== undefined)
  return JSON.stringify([kind, ...fields.toSorted(([a], [b]) => (a < b ? -1 : 1))])
}

function emitterRole({
  form,
  finish,
  widthMm,
  heightMm,
  pipeCentresMm,
}: Item & { readonly kind: 'emitter' }) {
  const { kind: formKind, ...formFigures } = form
  return { form: formKind, ...formFigures, finish, widthMm, heightMm, pipeCentresMm }
}
