import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { typedNumber } from '../../../draft/typed-number.ts'

type NumberBox = {
  readonly label: string
  readonly value: unknown
  readonly set: (value: number | string | undefined) => void
  readonly settle?: () => void
  readonly error?: string | undefined
}

/** A number that stays as it was typed. */
export function NumberBox({ label, value, set, settle, error }: NumberBox) {
  const shown = typeof value === 'number' || typeof value === 'string' ? String(value) : ''
  const [text, setText] = useState(shown)
  return (
    <TextInput
      label={label}
      inputMode="decimal"
      value={typedNumber(text) === value ? text : shown}
      error={error}
      {...(settle === undefined ? {} : { onBlur: settle })}
      onChange={({ currentTarget }) => {
        setText(currentTarget.value)
        set(typedNumber(currentTarget.value))
      }}
    />
  )
}
