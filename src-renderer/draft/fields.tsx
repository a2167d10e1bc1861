import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Choice } from '../parts/words.ts'
import { valueAt } from './path.ts'
import { penceText, percentText, typedNumber, typedPence, typedPercent } from './typed-number.ts'
import { useOpenJob, useProblemsAt } from './use-draft.ts'

type Field = {
  /** Where in the job it lies, which is also its id on the page. */
  readonly path: string
  readonly label: string
  readonly hint?: string
  /** In a table the column says it; the label is then only spoken. */
  readonly bare?: boolean
  readonly type?: string
}

function useField(path: string) {
  const { job, change } = useOpenJob()
  const error = useProblemsAt(path)
  return {
    value: valueAt(job, path),
    set: (value: unknown) => change({ kind: 'set', path, value }),
    rest: { id: path, error, onBlur: () => change({ kind: 'settle' }) },
  }
}

function labelled({ label, bare, hint }: Field) {
  return bare === true ? { 'aria-label': label } : { label, description: hint }
}

const asText = (value: unknown) =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : ''

/** A line of text. `optional` ones are taken away when empty. */
export function DraftText(props: Field & { readonly optional?: boolean }) {
  const { value, set, rest } = useField(props.path)
  return (
    <TextInput
      {...labelled(props)}
      {...rest}
      type={props.type ?? 'text'}
      value={asText(value)}
      onChange={({ currentTarget }) =>
        set(props.optional === true && currentTarget.value === '' ? undefined : currentTarget.value)
      }
    />
  )
}

/** A number. What is typed stays as typed; what is no number goes to the desk, which says so beside the field. */
export function DraftNumber(props: Field) {
  return <TypedBox {...props} read={typedNumber} show={asText} />
}

/** Money, typed in pounds and kept in pence. */
export function DraftMoney(props: Field) {
  return <TypedBox {...props} read={typedPence} show={penceText} />
}

/** A share, typed in percent and kept in hundredths of a percent. */
export function DraftPercent(props: Field) {
  return <TypedBox {...props} read={typedPercent} show={percentText} />
}

type Typed = {
  readonly read: (text: string) => number | string | undefined
  readonly show: (value: unknown) => string
}

function TypedBox({ read, show, ...props }: Field & Typed) {
  const { value, set, rest } = useField(props.path)
  const [text, setText] = useState(show(value))
  const shown = read(text) === value ? text : show(value)
  return (
    <TextInput
      {...labelled(props)}
      {...rest}
      inputMode="decimal"
      value={shown}
      onChange={({ currentTarget }) => {
        setText(currentTarget.value)
        set(read(currentTarget.value))
      }}
    />
  )
}

/** One of a few. Choices may be words or numbers. */
export function DraftChoice(props: Field & { readonly choices: readonly Choice[] }) {
  const { value, set, rest } = useField(props.path)
  const known = props.choices.some((choice) => choice.value === value)
  return (
    <NativeSelect
      {...labelled(props)}
      {...rest}
      value={asText(value)}
      data={[
        ...(known ? [] : [{ value: asText(value), label: 'Choose' }]),
        ...props.choices.map((choice) => ({ value: String(choice.value), label: choice.label })),
      ]}
      onChange={({ currentTarget }) =>
        set(props.choices.find((choice) => String(choice.value) === currentTarget.value)?.value)
      }
    />
  )
}

/** Yes, or not. Where `optional`, not is told by leaving the field away. */
export function DraftCheck(props: Field & { readonly optional?: boolean }) {
  const { value, set, rest } = useField(props.path)
  return (
    <Checkbox
      id={rest.id}
      error={rest.error}
      label={props.label}
      description={props.hint}
      checked={value === true}
      onChange={({ currentTarget }) =>
        set(currentTarget.checked ? true : props.optional === true ? undefined : false)
      }
    />
  )
}

/** Several lines: an address, a note. `asList` keeps them as a list of lines. */
export function DraftLines(props: Field & { readonly asList?: boolean }) {
  const { value, set, rest } = useField(props.path)
  const text = Array.isArray(value) ? value.join('\n') : asText(value)
  const read = (typed: string) => (props.asList === true ? (typed === '' ? [] : typed.split('\n')) : typed)
  return (
    <Textarea
      {...labelled(props)}
      {...rest}
      autosize
      minRows={3}
      value={text}
      onChange={({ currentTarget }) => {
        const next = read(currentTarget.value)
        set(next === '' ? undefined : next)
      }}
    />
  )
}
