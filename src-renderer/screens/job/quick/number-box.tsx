import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { typedNumber } from '../../../draft/typed-number.ts'

type NumberBox = {
  readonly id: string
  readonly label: string
  readonly hint?: string | undefined
  readonly value: unknown
  readonly error?: string | undefined
  readonly set: (value: number | string | undefined) => void
  readonly done?: (() => void) | undefined
}

/** A box for a number that keeps the text as it is typed. */
export function NumberBox({ id, label, hint, value, error, set, done }: NumberBox) {
  const written = typeof value === 'number' || typeof value === 'string' ? String(value) : ''
  const [text, setText] = useState(written)
  return (
    <TextInput
      id={id}
      label={label}
      description={hint}
      error={error}
      inputMode="decimal"
      value={typedNumber(text) === value ? text : written}
      onBlur={done}
      onChange={({ currentTarget }) => {
        setText(currentTarget.value)
        set(typedNumber(currentTarget.value))
      }}
    />
  )
}
