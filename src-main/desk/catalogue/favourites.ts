import { accept, refuse } from '../../domain/outcome.ts'
import { markFavourite, readFavourites, unmarkFavourite } from '../../store/favourites.ts'
import { readItem } from '../../store/items.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchItem } from './no-such-item.ts'

export const favouriteSet: UseCase<'favourite.set'> = ({ itemId, favourite }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const item = await readItem(tx, itemId)
    if (item === null) return noSuchItem(itemId)
    if (!favourite) {
      await unmarkFavourite(tx, itemId)
      return accept({ itemId, favourite })
    }
    if (item.retired === true) {
      const message = `${item.name} is retired, so that no job would take it: put it back before it can be a favourite.`
      return refuse('conflict', message, 'itemId', 'Put it back with item.retire, retired: false.')
    }
    const insteadOf = await markFavourite(tx, item)
    return accept({ itemId, favourite, ...(insteadOf === null ? {} : { insteadOf }) })
  })

export const favouriteList: UseCase<'favourite.list'> = async (_, desk) =>
  accept({ items: await reading(storeOf(desk), readFavourites) })
