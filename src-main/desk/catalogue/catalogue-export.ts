import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Catalogue } from '../../domain/catalogue.ts'
import type { Item } from '../../domain/item.ts'
import type { InputOf } from '../../contract/requests.ts'
import { catalogueTable } from '../../exchange/price-export/catalogue-table.ts'
import { lowestPence } from '../../store/prices-in-force.ts'
import { readFavourites } from '../../store/favourites.ts'
import { reading } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { writeExport } from '../prices/write-export.ts'
import { storeOf } from '../store-of.ts'
import { searchCatalogue } from './search-catalogue.ts'

type Input = InputOf<'catalogue.export'>

export const catalogueExport: UseCase<'catalogue.export'> = async (input, desk) => {
  const known = await knownSupplier(input, desk)
  if (!known.ok) return known
  const catalogue = await catalogueOf(desk)
  const favourites = new Set((await reading(storeOf(desk), readFavourites)).map(({ itemId }) => itemId))
  const prices = catalogue.prices.filter(
    ({ supplierId }) => input.supplierId === undefined || supplierId === input.supplierId,
  )
  const lowest = lowestPence(prices)
  const listed = chosenItems({ ...catalogue, favourites: [...favourites] }, input)
    .filter(({ itemId }) => input.supplierId === undefined || lowest.has(itemId))
    .map((item) => ({
      item,
      favourite: favourites.has(item.itemId),
      fromPence: lowest.get(item.itemId) ?? null,
    }))
  const name = ['catalogue', input.supplierId, isSearch(input) ? 'found' : undefined, desk.today]
  const named = name.filter((word) => word !== undefined).join('-')
  return writeExport(catalogueTable(listed), { form: input.form, out: input.out, name: named }, desk)
}

function isSearch({ text = '', favourite, retired }: Input): boolean {
  return text.trim() !== '' || favourite !== undefined || retired !== undefined
}

/** What a search finds, in its order; everything, retired or not, where none is asked for. */
function chosenItems(catalogue: Catalogue, input: Input): readonly Item[] {
  const { kind, text = '', favourite, retired } = input
  if (!isSearch(input)) return catalogue.items.filter((item) => kind === undefined || item.kind === kind)
  const search = { text, kind, favourite, retired, most: catalogue.items.length }
  return searchCatalogue(catalogue, search).items.map(({ item }) => item)
}

async function knownSupplier({ supplierId }: Input, desk: Desk): Promise<Outcome<null>> {
  if (supplierId === undefined) return accept(null)
  const suppliers = await reading(storeOf(desk), readSuppliers)
  if (suppliers.some((one) => one.supplierId === supplierId)) return accept(null)
  return refuse(
    'not-found',
    `There is no supplier ${supplierId}: name one that supplier.list has.`,
    'supplierId',
  )
}
