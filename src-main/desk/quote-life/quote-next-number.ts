import { accept } from '../../domain/outcome.ts'
import { numberIn, seriesOf, usualNumberPattern } from '../../engine/quote/life/quote-number.ts'
import { readFirm } from '../../store/firm.ts'
import { nextInSeries } from '../../store/quotes.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

/** The number that the next new quote would get today. Asking takes none. */
export const quoteNextNumber: UseCase<'quote.nextNumber'> = ({ quoteNumbers }, desk) =>
  reading(storeOf(desk), async (tx) => {
    const pattern = quoteNumbers ?? (await readFirm(tx))?.quoteNumbers ?? usualNumberPattern
    const series = seriesOf(pattern, desk.today)
    return accept({
      number: numberIn(series, await nextInSeries(tx, series, (nth) => numberIn(series, nth))),
    })
  })
