import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call, problemsOf } from '../../../bridge/call.ts'
import { penceText, typedPence } from '../../../draft/typed-number.ts'
import { money } from '../../../parts/figures-in-words.ts'
import { askPricesAgain } from '../bring-in/use-bring-in.ts'
import { words } from './grid.words.ts'
import type { PriceRow } from './use-price-rows.ts'

/** A price that is being typed over in its row. */
export type PriceEdit = {
  readonly rowNo: number
  readonly text: string
  /** True when it was opened by typing: what is there is then the first figure. */
  readonly begun: boolean
  readonly error: string | null
}

/** What was typed as whole pence, or what is wrong with it. */
export function typedPrice(text: string): number | string {
  const pence = typedPence(text)
  if (pence === undefined) return words.noPrice
  if (typeof pence === 'string') return words.noMoney(pence)
  return pence < 0 ? words.negative : pence
}

/** The price of one row at a time, typed over in its place; what was saved is told in words. */
export function usePriceEdit() {
  const queries = useQueryClient()
  const [edit, setEdit] = useState<PriceEdit | null>(null)
  const [told, setTold] = useState<readonly string[]>([])
  const set = useMutation({
    mutationFn: (input: { readonly row: PriceRow; readonly listPence: number }) =>
      call('priceList.setPrice', { rowNo: input.row.rowNo, listPence: input.listPence }),
    onSuccess: () => askPricesAgain(queries),
  })
  const open = (row: PriceRow, typed?: string) =>
    setEdit({
      rowNo: row.rowNo,
      text: typed ?? penceText(row.listPence),
      begun: typed !== undefined,
      error: null,
    })
  const fail = (error: string) => setEdit((now) => (now === null ? null : { ...now, error }))
  const save = async (row: PriceRow, then: () => void) => {
    if (edit === null || set.isPending) return
    const listPence = typedPrice(edit.text)
    if (typeof listPence === 'string') return fail(listPence)
    if (listPence === row.listPence) return then()
    try {
      const { cautions } = await set.mutateAsync({ row, listPence })
      setTold([words.nowIs(row.code, money(row.listPence), money(listPence)), ...cautions])
      then()
    } catch (error) {
      fail(
        problemsOf(error)
          .map(({ message }) => message)
          .join(' '),
      )
    }
  }
  return {
    edit,
    told,
    busy: set.isPending,
    open,
    save,
    type: (text: string) => setEdit((now) => (now === null ? null : { ...now, text, error: null })),
    leave: () => setEdit(null),
  }
}
