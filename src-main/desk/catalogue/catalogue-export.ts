import { catalogueTable } from '../../exchange/price-export/catalogue-table.ts'
import { lowestPence } from '../../store/prices-in-force.ts'
import { readFavourites } from '../../store/favourites.ts'
import { reading } from '../../store/store.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { UseCase } from '../desk.ts'
import { writeExport } from '../prices/write-export.ts'
import { storeOf } from '../store-of.ts'

export const catalogueExport: UseCase<'catalogue.export'> = async ({ form, kind, out }, desk) => {
  const { items, prices } = await catalogueOf(desk)
  const favourites = new Set((await reading(storeOf(desk), readFavourites)).map(({ itemId }) => itemId))
  const lowest = lowestPence(prices)
  const listed = items
    .filter((item) => kind === undefined || item.kind === kind)
    .map((item) => ({
      item,
      favourite: favourites.has(item.itemId),
      fromPence: lowest.get(item.itemId) ?? null,
    }))
  return writeExport(catalogueTable(listed), { form, out, name: `catalogue-${desk.today}` }, desk)
}
