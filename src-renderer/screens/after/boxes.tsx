import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { penceText, typedNumber, typedPence } from '../../draft/typed-number.ts'
import { words } from './after.words.ts'

type Box = {
  readonly label: string
  /** Named for whoever cannot see the column, where the column's head is its label. */
  readonly bare?: boolean
  readonly value: number | undefined
  readonly set: (value: number | undefined) => void
  readonly shut: boolean
  readonly money?: boolean
  /** What an empty box means; nothing at all when absent. */
  readonly empty?: number
  /** Shows an empty box for what an empty box means. */
  readonly blank?: boolean
  readonly className?: string | undefined
}

/** A box for a number or for money. What is none stays in the box, marked, and is not kept. */
export function NumberBox({
  label,
  bare = false,
  value,
  set,
  shut,
  money = false,
  empty,
  blank = false,
  className,
}: Box) {
  const told =
    value === undefined || (blank && value === empty) ? '' : money ? penceText(value) : String(value)
  const [typed, setTyped] = useState<{ readonly text: string; readonly of: number | undefined } | null>(null)
  const text = typed !== null && typed.of === value ? typed.text : told
  const read = money ? typedPence : typedNumber
  const wrong = typeof read(text) === 'string'
  return (
    <TextInput
      {...(bare ? { 'aria-label': label } : { label })}
      {...(className === undefined ? {} : { className })}
      inputMode="decimal"
      readOnly={shut}
      value={text}
      error={wrong ? (money ? words.wrongMoney : words.wrongNumber) : null}
      onChange={({ currentTarget }) => {
        const is = read(currentTarget.value)
        const next = typeof is === 'string' ? value : (is ?? empty)
        setTyped({ text: currentTarget.value, of: next })
        if (next !== value) set(next)
      }}
    />
  )
}
