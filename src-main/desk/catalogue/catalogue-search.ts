import { accept } from '../../domain/outcome.ts'
import { searchItems } from '../../store/search.ts'
import { reading } from '../../store/store.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { UseCase } from '../desk.ts'
import { searchCatalogue } from './search-catalogue.ts'

export const catalogueSearch: UseCase<'catalogue.search'> = async (input, desk) => {
  if (desk.store === null) return accept(searchCatalogue(await catalogueOf(desk), input))
  return accept(await reading(desk.store, (tx) => searchItems(tx, { ...input, day: desk.today })))
}
