import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useRef, useState } from 'react'
import type { RefObject } from 'react'
import type { Variation } from '../../../src-main/domain/follow-up/after-job.ts'
import { taxCategory } from '../../../src-main/domain/pricing.ts'
import { typedPence } from '../../draft/typed-number.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { dayInWords, money } from '../../parts/figures-in-words.ts'
import styles from './after.module.css'
import { words } from './after.words.ts'
import type { Notes } from './use-after.ts'

const own = words.variations
const choices = (labels: Readonly<Record<string, string>>) =>
  Object.entries(labels).map(([value, label]) => ({ value, label }))

/** What was agreed after the quote was accepted. */
export function VariationsCard({ notes, today }: { readonly notes: Notes; readonly today: string }) {
  const { after, change, shut } = notes
  const add = (one: Omit<Variation, 'variationId'>) => {
    const last = Math.max(
      0,
      ...after.variations.map(({ variationId }) => Number(variationId.split('-')[1] ?? 0)),
    )
    change({ variations: [...after.variations, { variationId: `v-${last + 1}`, ...one }] })
  }
  const remove = (id: string) =>
    change({ variations: after.variations.filter(({ variationId }) => variationId !== id) })
  return (
    <Card title={own.title} says={own.says}>
      {after.variations.length === 0 ? <p className={styles.soft}>{own.none}</p> : null}
      <ul className={styles.list} aria-label={own.title}>
        {after.variations.map(({ variationId, what, onDay, agreed, said, netPence, rateKey }) => (
          <li key={variationId}>
            <span className={styles.grow}>
              {what}
              <br />
              <span className={styles.soft}>
                {own.agreed[agreed]}, {dayInWords(onDay)}
                {said === '' ? '' : `: “${said}”`}
              </span>
            </span>
            <span className={styles.soft}>{own.rates[rateKey]}</span>
            <span>{money(netPence)}</span>
            {shut ? null : (
              <Button variant="default" aria-label={own.remove(what)} onClick={() => remove(variationId)}>
                {own.take}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {shut ? null : <NewVariation add={add} today={today} />}
    </Card>
  )
}

type Typed = Readonly<Record<'what' | 'onDay' | 'agreed' | 'said' | 'price' | 'rateKey', string>>
type New = { readonly add: (one: Omit<Variation, 'variationId'>) => void; readonly today: string }

function NewVariation({ add, today }: New) {
  const empty: Typed = { what: '', onDay: today, agreed: 'spoken', said: '', price: '', rateKey: 'standard' }
  const [typed, setTyped] = useState(empty)
  const [told, setTold] = useState(false)
  const first = useRef<HTMLInputElement>(null)
  const set = (more: Partial<Typed>) => setTyped({ ...typed, ...more })
  const netPence = typedPence(typed.price)
  const whole = typed.what.trim() !== '' && typeof netPence === 'number' && typed.onDay !== ''
  const keep = () => {
    setTold(!whole)
    first.current?.focus()
    if (!whole) return
    const { what, onDay, said } = typed
    const agreed = typed.agreed === 'inWriting' ? 'inWriting' : 'spoken'
    add({
      what: what.trim(),
      onDay,
      agreed,
      said: said.trim(),
      netPence,
      rateKey: taxCategory.parse(typed.rateKey),
    })
    setTyped({ ...empty, rateKey: typed.rateKey })
  }
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Stack>
        <Boxes typed={typed} set={set} wrong={told && !whole} first={first} />
        <Row>
          <Button type="submit" variant="default">
            {own.add}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

type Boxes = {
  readonly typed: Typed
  readonly set: (more: Partial<Typed>) => void
  readonly wrong: boolean
  readonly first: RefObject<HTMLInputElement | null>
}

function Boxes({ typed, set, wrong, first }: Boxes) {
  return (
    <FieldGrid>
      <Wide>
        <TextInput
          ref={first}
          label={own.what}
          value={typed.what}
          error={wrong ? own.incomplete : null}
          onChange={({ currentTarget }) => set({ what: currentTarget.value })}
        />
      </Wide>
      <TextInput
        type="date"
        label={own.day}
        value={typed.onDay}
        onChange={({ currentTarget }) => set({ onDay: currentTarget.value })}
      />
      <NativeSelect
        label={own.how}
        data={choices(own.agreed)}
        value={typed.agreed}
        onChange={({ currentTarget }) => set({ agreed: currentTarget.value })}
      />
      <NativeSelect
        label={own.tax}
        data={choices(own.rates)}
        value={typed.rateKey}
        onChange={({ currentTarget }) => set({ rateKey: currentTarget.value })}
      />
      <TextInput
        label={own.price}
        description={own.minus}
        inputMode="decimal"
        value={typed.price}
        onChange={({ currentTarget }) => set({ price: currentTarget.value })}
      />
      <Wide>
        <TextInput
          label={own.said}
          value={typed.said}
          onChange={({ currentTarget }) => set({ said: currentTarget.value })}
        />
      </Wide>
    </FieldGrid>
  )
}
