import { accept } from '../../domain/outcome.ts'
import { compareQuotes } from '../../engine/quote/life/compare-quotes.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { workUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { issuedOf } from './quote-row.ts'

export const quoteCompare: UseCase<'quote.compare'> = async (input, desk) => {
  const was = await reading(storeOf(desk), (tx) => issuedOf(tx, input.quoteId))
  if (!was.ok) return was
  const earlier = was.value.quote.snapshot.quote
  if ('job' in input) {
    const worked = await workUp(input.job, desk)
    return worked.ok ? accept(compareQuotes(earlier, worked.value.quote)) : worked
  }
  const is = await reading(storeOf(desk), (tx) => issuedOf(tx, input.with, 'with'))
  return is.ok ? accept(compareQuotes(earlier, is.value.quote.snapshot.quote)) : is
}
