import { accept, refuse } from '../../domain/outcome.ts'
import type { KeptRow } from '../../domain/price-list.ts'
import { orderedBreaks, pounds } from '../../exchange/price-files/values/price-breaks.ts'
import { beginChange, endChange } from '../../store/price-list/changes.ts'
import { readKeptRows } from '../../store/price-list/kept-rows.ts'
import { putPrices } from '../../store/price-list/put-prices.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { staleBefore } from './stale-before.ts'

/** The price of a row's pack on its supplier's list, item of the catalogue or not; its price breaks stay unless others are given. */
export const priceListSetPrice: UseCase<'priceList.setPrice'> = async (input, desk) => {
  const on = await staleBefore(desk)
  if (!on.ok) return on
  const { rowNo, listPence, validFrom = desk.today } = input
  return writing(storeOf(desk), async (tx) => {
    const [row] = await readKeptRows(tx, [rowNo], on.value)
    if (row === undefined)
      return refuse('not-found', `There is no row ${rowNo} in the suppliers' lists.`, 'rowNo')
    const cautions: string[] = []
    const breaks = orderedBreaks(input.breaks ?? row.breaks ?? [], {
      packPence: listPence,
      note: (says) => cautions.push(says),
    })
    const text = breaks.length === 0 ? null : JSON.stringify(breaks)
    if (isAsItWas(row, { listPence, breaks: text, validFrom }))
      return accept({ row, changeNo: null, cautions })
    const says = `${row.code}: ${pounds(row.listPence)} is now ${pounds(listPence)}`
    const change = { kind: 'single', supplierId: row.supplierId, says, at: desk.now() } as const
    const changeNo = await beginChange(tx, change)
    await putPrices(tx, changeNo, [{ rowNo, packPence: listPence, breaks: text, validFrom }])
    await endChange(tx, changeNo, { changed: 1 })
    const [after] = await readKeptRows(tx, [rowNo], on.value)
    if (after === undefined) throw new Error('The row whose price was set is not there')
    return accept({ row: after, changeNo, cautions })
  })
}

type Wanted = { readonly listPence: number; readonly breaks: string | null; readonly validFrom: string }

/** True when the price in force says the same already; one that is yet to begin is another price. */
function isAsItWas(row: KeptRow, { listPence, breaks, validFrom }: Wanted): boolean {
  const was = row.breaks === undefined ? null : JSON.stringify(row.breaks)
  const holds = row.validFrom <= validFrom && (row.validTo === undefined || row.validTo >= validFrom)
  return holds && row.goneFrom === undefined && row.listPence === listPence && was === breaks
}
