import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import type { Item } from '../../../src-main/domain/item.ts'
import { problemsOf, sentencesOf } from '../../bridge/call.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { FieldGrid, Row, Wide } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import { fieldsOf, optionInWords } from './item-fields.ts'
import type { ItemField } from './item-fields.ts'
import type { useItem } from './use-item.ts'

type Form = {
  /** The item as it is; a new one has an id and a kind, and wants the rest. */
  readonly start: Item
  readonly save: ReturnType<typeof useItem>['save']
  readonly onSaved: (item: Item) => void
  readonly button: string
}

type Typed = Readonly<Record<string, string>>

/** The name, the other words and the figures of an item's kind. What is wrong is said by the desk, beside the box. */
export function ItemForm({ start, save, onSaved, button }: Form) {
  const fields = fieldsOf(start.kind)
  const [typed, setTyped] = useState<Typed>(() => typedOf(start, fields))
  const problems = problemsOf(save.error)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    save.mutate({ item: itemOf(start, fields, typed) }, { onSuccess: ({ item }) => onSaved(item) })
  }
  const box = (name: string, path: string) => ({
    value: typed[name] ?? '',
    error: problems.find((problem) => problem.path === `item.${path}`)?.message,
    onChange: ({ currentTarget }: { readonly currentTarget: { readonly value: string } }) =>
      setTyped({ ...typed, [name]: currentTarget.value }),
  })
  return (
    <form onSubmit={submit} noValidate>
      <FieldGrid>
        <Wide>
          <TextInput label="Name" {...box('name', 'name')} />
        </Wide>
        <Wide>
          <TextInput
            label="What else you call it"
            description="Parted by commas"
            {...box('alsoCalled', 'alsoCalled')}
          />
        </Wide>
        {fields.map((field) => (
          <Box key={field.path.join('.')} field={field} box={box(nameOf(field), nameOf(field))} />
        ))}
      </FieldGrid>
      {problems.length === 0 ? null : <ProblemList title="Not saved" problems={sentencesOf(save.error)} />}
      <Row>
        <Button mt="md" type="submit" loading={save.isPending}>
          {button}
        </Button>
      </Row>
    </form>
  )
}

type BoxProps = {
  readonly value: string
  readonly error: string | undefined
  readonly onChange: (event: { readonly currentTarget: { readonly value: string } }) => void
}

function Box({ field, box }: { readonly field: ItemField; readonly box: BoxProps }) {
  if (field.options === null) return <TextInput label={field.label} inputMode="decimal" {...box} />
  const none = field.optional || box.value === '' ? [{ value: '', label: 'Not said' }] : []
  const options = field.options.map((value) => ({ value, label: optionInWords(value) }))
  return <NativeSelect label={field.label} data={[...none, ...options]} {...box} />
}

const nameOf = (field: ItemField) => field.path.join('.')

function typedOf(item: Item, fields: readonly ItemField[]): Typed {
  const figures = fields.map((field) => [nameOf(field), textOf(valueIn(item, field.path))] as const)
  return { name: item.name, alsoCalled: (item.alsoCalled ?? []).join(', '), ...Object.fromEntries(figures) }
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

function valueIn(from: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (inner, name) => (typeof inner === 'object' && inner !== null ? Reflect.get(inner, name) : undefined),
    from,
  )
}

/** The item with what was typed; what is no number goes to the desk as it was typed, which then says so. */
function itemOf(start: Item, fields: readonly ItemField[], typed: Typed): Item {
  const words = (typed['alsoCalled'] ?? '').split(',').map((word) => word.trim())
  const { alsoCalled: _, ...rest } = start
  const named = words.filter((word) => word !== '')
  const item: Record<string, unknown> = {
    ...rest,
    name: typed['name'] ?? '',
    ...(named.length === 0 ? {} : { alsoCalled: named }),
  }
  for (const field of fields) put(item, field, typed[nameOf(field)] ?? '')
  return item as Item
}

function put(item: Record<string, unknown>, field: ItemField, text: string): void {
  const value = field.options === null ? typedNumber(text) : text === '' ? undefined : text
  const [first = '', second] = field.path
  if (second === undefined) {
    item[first] = value
    return
  }
  const { [second]: _, ...others } = (item[first] ?? {}) as Record<string, unknown>
  item[first] = value === undefined ? others : { ...others, [second]: value }
}
