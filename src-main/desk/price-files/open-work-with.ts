import type { Catalogue } from '../../domain/catalogue.ts'
import { netOfDiscount, readDiscounts } from '../../store/price-list/discounts.ts'
import { readCatalogue } from '../../store/catalogue.ts'
import type { ComingPrice } from '../../store/sqlite/price-file/report.ts'
import { closeStore, openStore, reading } from '../../store/store.ts'
import { openWork } from '../prices/open-work.ts'
import type { OpenWork } from '../prices/open-work.ts'

/** What open jobs would cost with the prices to come, on the day from which they hold. */
export async function openWorkWith(
  coming: readonly ComingPrice[],
  { folder, today }: { readonly folder: string; readonly today: string },
  day: string,
): Promise<readonly OpenWork[]> {
  const now = () => `${today}T00:00:00.000Z`
  const opened = await openStore({ folder, now })
  if (!opened.ok) throw new Error('The data file could not be opened a second time')
  const store = opened.value
  try {
    const { catalogue, prices } = await reading(store, async (tx) => {
      const discounts = await readDiscounts(tx)
      const net = coming.map(({ price, group }) => {
        const off = discounts(price.supplierId, group, day)
        const { breaks, ...rest } = price
        const netBreaks = breaks?.map((one) => ({ ...one, packPence: netOfDiscount(one.packPence, off) }))
        return {
          ...rest,
          packPence: netOfDiscount(price.packPence, off),
          ...(netBreaks === undefined ? {} : { breaks: netBreaks }),
        }
      })
      return { catalogue: await readCatalogue(tx, day), prices: net }
    })
    const desk = { today, now, store, dataFolder: folder, papersFolder: folder, mayChoosePath: false }
    return await openWork(catalogue, withComing(catalogue, prices), desk)
  } finally {
    await closeStore(store)
  }
}

function withComing(catalogue: Catalogue, prices: Catalogue['prices']): Catalogue {
  const codeOf = ({ supplierId, code }: Catalogue['prices'][number]) => `${supplierId} ${code}`
  const coming = new Set(prices.map(codeOf))
  return {
    ...catalogue,
    prices: [...catalogue.prices.filter((price) => !coming.has(codeOf(price))), ...prices],
  }
}
