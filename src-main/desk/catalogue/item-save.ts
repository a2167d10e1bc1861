import type { Item } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import { favouritesAmong, markFavourite } from '../../store/favourites.ts'
import { putItem, readItem } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { itemProblems } from './item-problems.ts'

/** Quotes that were kept hold their own copy of every item, so that a change reaches only what is still under construction. */
export const itemSave: UseCase<'item.save'> = ({ item: given }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const problems = itemProblems(given)
    if (problems.length > 0) return { ok: false, problems }
    const before = await readItem(tx, given.itemId)
    if (before !== null && before.kind !== given.kind) {
      const message = `${before.name} is of the kind ${before.kind}, and an item's kind cannot be changed to ${given.kind}.`
      return refuse('conflict', message, 'item.kind', 'Save it as a new item, under another id.')
    }
    const item: Item = { ...given, generic: staysGeneric(given, before) }
    await putItem(tx, item)
    const marked = await favouritesAmong(tx, [item.itemId])
    if (marked.size > 0) await markFavourite(tx, item)
    return accept({ item, isNew: before === null })
  })

/** A figure that the firm typed is the firm's own; a name, a note or another word for a thing is no figure. */
function staysGeneric(item: Item, before: Item | null): boolean {
  return before !== null && before.generic && item.generic && figuresOf(item) === figuresOf(before)
}

function figuresOf(item: Item): string {
  const {
    name: _name,
    alsoCalled: _words,
    note: _note,
    retired: _retired,
    generic: _generic,
    ...figures
  } = item
  return inOneOrder(figures)
}

/** JSON whose fields stand in one order, whatever order they came in. */
function inOneOrder(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )
}
