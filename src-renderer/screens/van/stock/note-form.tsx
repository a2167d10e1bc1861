import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import type { RefObject } from 'react'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { vanMoveKind } from '../../../../src-main/domain/follow-up/van.ts'
import type { VanMoveKind } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk, useCommand } from '../../../bridge/use-ask.ts'
import { typedNumber } from '../../../draft/typed-number.ts'
import { FieldGrid, Stack } from '../../../parts/card.tsx'
import { Notice, ProblemList } from '../../../parts/notice.tsx'
import { amount, unitWord } from '../amount.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'

const kinds = Object.entries(words.note.kinds).map(([value, label]) => ({ value, label }))

type Typed = {
  readonly kind: VanMoveKind
  readonly quantity: string
  readonly onDay: string | null
  readonly says: string
}
const nothing: Typed = { kind: 'receipt', quantity: '', onDay: null, says: '' }

/** A change as it is typed, and how it is kept. */
function useNote(itemId: string) {
  const queries = useQueryClient()
  const [typed, setTyped] = useState(nothing)
  const [tried, setTried] = useState(false)
  const keep = useCommand('van.note', () =>
    Promise.all(['van.stock', 'van.moves'].map((name) => queries.invalidateQueries({ queryKey: [name] }))),
  )
  const quantity = typedNumber(typed.quantity)
  const wrong = typeof quantity !== 'number'
  const give = () => {
    setTried(true)
    if (wrong) return keep.reset()
    const { kind, onDay, says } = typed
    const day = onDay === null || onDay === '' ? {} : { onDay }
    const why = says.trim() === '' ? {} : { says: says.trim() }
    const onSuccess = () => {
      setTried(false)
      setTyped({ ...nothing, kind })
    }
    keep.mutate({ itemId, kind, quantity, ...day, ...why }, { onSuccess })
  }
  const set = (more: Partial<Typed>) => setTyped({ ...typed, ...more })
  return { typed, set, keep, give, wrong, told: tried && wrong }
}

/** Writes down what went into or out of the van. */
export function NoteForm({ item }: { readonly item: AnswerOf<'van.moves'> }) {
  const { itemId, unit } = item
  const { typed, set, keep, give, wrong, told } = useNote(itemId)
  const box = useRef<HTMLInputElement>(null)
  // Who found the item beside this pressed a button that is gone: the focus goes on to what is typed next.
  useEffect(() => {
    if (document.activeElement === document.body) box.current?.focus()
  }, [])
  const problems = sentencesOf(keep.error)
  return (
    <form
      className={styles.note}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        give()
        if (wrong) box.current?.focus()
      }}
    >
      <Stack>
        <Fields typed={typed} set={set} unit={unit} box={box} wrong={told} />
        {problems.length === 0 ? null : <ProblemList title={words.note.notNoted} problems={problems} />}
        <div>
          <Button type="submit" loading={keep.isPending}>
            {words.note.keep}
          </Button>
        </div>
        {keep.data === undefined ? null : (
          <Notice tone="good" title={words.note.noted(amount(keep.data.quantity, unit))} />
        )}
      </Stack>
    </form>
  )
}

type FieldsProps = {
  readonly typed: Typed
  readonly set: (more: Partial<Typed>) => void
  readonly unit: string
  readonly box: RefObject<HTMLInputElement | null>
  readonly wrong: boolean
}

function Fields({ typed, set, unit, box, wrong }: FieldsProps) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  const today = about.data?.today ?? ''
  const { kind } = typed
  return (
    <FieldGrid>
      <NativeSelect
        label={words.note.kind}
        description={words.note.kindSays[kind]}
        data={kinds}
        value={kind}
        onChange={({ currentTarget }) => set({ kind: vanMoveKind.parse(currentTarget.value) })}
      />
      <TextInput
        ref={box}
        label={words.note.quantity(unitWord(unit))}
        inputMode="decimal"
        value={typed.quantity}
        error={wrong ? words.note.wantsNumber : undefined}
        onChange={({ currentTarget }) => set({ quantity: currentTarget.value })}
      />
      <TextInput
        type="date"
        label={words.note.onDay}
        value={typed.onDay ?? today}
        max={today}
        onChange={({ currentTarget }) => set({ onDay: currentTarget.value })}
      />
      <TextInput
        label={kind === 'correction' ? words.note.whyCorrection : words.note.why}
        value={typed.says}
        onChange={({ currentTarget }) => set({ says: currentTarget.value })}
      />
    </FieldGrid>
  )
}
