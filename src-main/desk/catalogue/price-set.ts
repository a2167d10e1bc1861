import { setPrice } from '../../store/prices.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const priceSet: UseCase<'price.set'> = (input, desk) =>
  writing(storeOf(desk), (tx) =>
    setPrice(tx, { ...input, validFrom: input.validFrom ?? desk.today }, desk.now()),
  )
