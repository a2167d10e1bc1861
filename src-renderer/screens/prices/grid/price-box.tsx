import { useEffect, useId, useRef } from 'react'
import type { KeyboardEvent } from 'react'
import styles from '../prices.module.css'
import { words } from './grid.words.ts'
import type { PriceEdit } from './use-price-edit.ts'
import type { PriceRow } from './use-price-rows.ts'

type Box = {
  readonly row: PriceRow
  readonly edit: PriceEdit
  readonly busy: boolean
  readonly type: (text: string) => void
  /** Saves; 0 stays at the row, 1 goes on to the next and -1 back to the one before. */
  readonly save: (onward: -1 | 0 | 1) => void
  readonly leave: () => void
  readonly onFocus: () => void
}

/** The list price of a row, to be typed over: Enter saves, Tab saves and goes on, Esc leaves. */
export function PriceBox({ row, edit, busy, type, save, leave, onFocus }: Box) {
  const box = useRef<HTMLInputElement>(null)
  const saysId = useId()
  useEffect(() => {
    box.current?.focus()
    if (!edit.begun) box.current?.select()
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- once, when it opens
  }, [])
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation()
    if (event.key === 'Enter') save(0)
    else if (event.key === 'Tab') save(event.shiftKey ? -1 : 1)
    else if (event.key === 'Escape') leave()
    else return
    event.preventDefault()
  }
  const says = edit.error ?? (row.discountBasisPoints === undefined ? null : beforeDiscount(row))
  return (
    <span className={styles.boxCell} onClick={(event) => event.stopPropagation()}>
      {says === null ? null : (
        <span
          id={saysId}
          className={styles.boxSays}
          data-wrong={edit.error !== null}
          role={edit.error === null ? undefined : 'alert'}
        >
          {says}
        </span>
      )}
      <input
        ref={box}
        className={styles.priceBox}
        aria-label={words.box(row.code)}
        aria-invalid={edit.error !== null}
        aria-describedby={says === null ? undefined : saysId}
        inputMode="decimal"
        autoComplete="off"
        readOnly={busy}
        value={edit.text}
        onChange={({ currentTarget }) => type(currentTarget.value)}
        onKeyDown={onKeyDown}
        onFocus={onFocus}
      />
    </span>
  )
}

function beforeDiscount({ discountBasisPoints = 0 }: PriceRow): string {
  return words.beforeDiscount(discountBasisPoints / 100)
}
