import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { putItem, readItem } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import type { ReadTx } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchItem } from './no-such-item.ts'

export const itemCopy: UseCase<'item.copy'> = ({ itemId, newItemId, name }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const from = await readItem(tx, itemId)
    if (from === null) return noSuchItem(itemId)
    const id = await idOfCopy(tx, newItemId, name)
    if (!id.ok) return id
    const { retired: _retired, ...rest } = from
    const item = { ...rest, itemId: id.value, name }
    await putItem(tx, item)
    return accept({ item })
  })

async function idOfCopy(tx: ReadTx, wanted: string | undefined, name: string): Promise<Outcome<string>> {
  if (wanted === undefined) return accept(await freeId(tx, idFromName(name)))
  const taken = await readItem(tx, wanted)
  if (taken === null) return accept(wanted)
  const message = `There is an item ${wanted} already (${taken.name}): give the copy another id, or none.`
  return refuse('conflict', message, 'newItemId')
}

/** `Towel rail, 500 wide` as `towel-rail-500-wide`. */
export function idFromName(name: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
  const id = plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 70)
    .replace(/^-+|-+$/g, '')
  return id === '' ? 'item' : id
}

async function freeId(tx: ReadTx, id: string): Promise<string> {
  for (let n = 1; ; n += 1) {
    const tried = n === 1 ? id : `${id}-${n}`
    if ((await readItem(tx, tried)) === null) return tried
  }
}
