import { Box, Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import type { Item } from '../../../src-main/domain/item.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { FieldGrid, Row, Wide } from '../card.tsx'
import { ProblemList } from '../notice.tsx'
import { fieldsOf, optionInWords } from './item-fields.ts'
import type { ItemField } from './item-fields.ts'
import { words } from './item.words.ts'

type Form = {
  /** The item as it is; a new one has an id and a kind, and wants the rest. */
  readonly start: Item
  /** What the desk found wrong with it, each by the path of its field below `item`. */
  readonly problems: readonly Problem[]
  readonly busy: boolean
  readonly onSave: (item: Item) => void
  readonly button: string
}

type Typed = Readonly<Record<string, string>>

/** The name, the other words and the figures of an item's kind. What is wrong is said by the desk, beside the box. */
export function ItemForm({ start, problems, busy, onSave, button }: Form) {
  const fields = fieldsOf(start.kind)
  const [typed, setTyped] = useState<Typed>(() => typedOf(start, fields))
  const submit = (event: FormEvent) => {
    event.preventDefault()
    onSave(itemOf(start, fields, typed))
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
          <TextInput label={words.name} {...box('name', 'name')} />
        </Wide>
        <Wide>
          <TextInput
            label={words.alsoCalled}
            description={words.alsoCalledSays}
            {...box('alsoCalled', 'alsoCalled')}
          />
        </Wide>
        {fields.map((field) => (
          <Figure key={field.path.join('.')} field={field} box={box(nameOf(field), nameOf(field))} />
        ))}
      </FieldGrid>
      {problems.length === 0 ? null : (
        <Box mt="md">
          <ProblemList title={words.notSaved} problems={problems.map(({ path: _path, ...rest }) => rest)} />
        </Box>
      )}
      <Row>
        <Button mt="md" type="submit" loading={busy}>
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

function Figure({ field, box }: { readonly field: ItemField; readonly box: BoxProps }) {
  if (field.options === null) return <TextInput label={field.label} inputMode="decimal" {...box} />
  const none = field.optional || box.value === '' ? [{ value: '', label: words.notSaid }] : []
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
  const others = (typed['alsoCalled'] ?? '').split(',').map((word) => word.trim())
  const { alsoCalled: _, ...rest } = start
  const named = others.filter((word) => word !== '')
  const item: Record<string, unknown> = {
    ...rest,
    name: typed['name'] ?? '',
    ...(named.length === 0 ? {} : { alsoCalled: named }),
  }
  for (const field of fields) put(item, field, typed[nameOf(field)] ?? '')
  return item as Item
}

function put(item: Record<string, unknown>, field: ItemField, text: string): void {
  const value = valueOf(field, text)
  const [first = '', second] = field.path
  if (second === undefined) {
    item[first] = value
    return
  }
  const { [second]: _, ...others } = (item[first] ?? {}) as Record<string, unknown>
  item[first] = value === undefined ? others : { ...others, [second]: value }
}

function valueOf({ options, counts }: ItemField, text: string): unknown {
  if (options === null || counts) return typedNumber(text)
  return text === '' ? undefined : text
}
