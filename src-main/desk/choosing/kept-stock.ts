import type { Catalogue } from '../../domain/catalogue.ts'
import { emitterStock } from '../../engine/choose/emitter-stock.ts'
import type { EmitterStock } from '../../engine/choose/emitter-stock.ts'
import { shelfOf } from '../../engine/takeoff/shelf.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { readCatalogue } from '../../store/catalogue.ts'
import { catalogueState } from '../../store/sqlite/file-state.ts'
import { reading, watchingCatalogue } from '../../store/store.ts'
import type { Store } from '../../store/store.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk } from '../desk.ts'

/** A catalogue laid out for choosing: for looking up, and in columns. */
export type Stocked = { readonly shelf: Shelf; readonly stock: EmitterStock }

type Kept = { readonly state: string; readonly day: string; readonly stocked: Stocked }

/** The last one of each open file: reading and laying out many thousands takes far longer than choosing among them. */
const keptOf = new WeakMap<Store, Kept>()
const shipped = new Map<string, Stocked>()

/**
 * The catalogue with the prices of a day, laid out for choosing; kept until the catalogue is written to, another program or worker
 * writes to the file, or another day is asked for. Saving a job leaves it alone.
 */
export async function stockOn(day: string, desk: Desk): Promise<Stocked> {
  const { store } = desk
  if (store === null) return shippedOn(day, desk)
  await watchingCatalogue(store)
  return reading(store, async (tx) => {
    const state = await catalogueState(tx)
    const kept = keptOf.get(store)
    if (kept !== undefined && kept.state === state && kept.day === day) return kept.stocked
    const stocked = laidOut(await readCatalogue(tx, day))
    keptOf.set(store, { state, day, stocked })
    return stocked
  })
}

/** The shipped catalogue never changes while the program runs. */
async function shippedOn(day: string, desk: Desk): Promise<Stocked> {
  const known = shipped.get(day)
  if (known !== undefined) return known
  const stocked = laidOut(await catalogueOf(desk, day))
  shipped.clear()
  shipped.set(day, stocked)
  return stocked
}

function laidOut(catalogue: Catalogue): Stocked {
  const shelf = shelfOf(catalogue)
  return { shelf, stock: emitterStock(shelf) }
}
