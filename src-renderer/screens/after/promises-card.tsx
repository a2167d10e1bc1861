import { Button, TextInput, Textarea } from '@mantine/core'
import { useRef, useState } from 'react'
import type { Guarantee } from '../../../src-main/domain/follow-up/after-job.ts'
import { Card, FieldGrid, Stack } from '../../parts/card.tsx'
import { dayInWords } from '../../parts/figures-in-words.ts'
import styles from './after.module.css'
import { words } from './after.words.ts'
import { NumberBox } from './boxes.tsx'
import type { Notes } from './use-after.ts'

const own = words.promises

/** Guarantees, as they stand on the handover sheet. */
export function PromisesCard({ notes: { after, change, shut } }: { readonly notes: Notes }) {
  const guarantees = after.guarantees ?? []
  return (
    <Card title={own.title} says={own.says}>
      <ul className={styles.list} aria-label={own.title}>
        {guarantees.map(({ what, until, says = '' }, at) => (
          <li key={`${what}${at}`}>
            <span className={styles.grow}>
              {what}, {own.until.toLowerCase()} {dayInWords(until)}
              {says === '' ? null : <span className={styles.soft}> {says}</span>}
            </span>
            {shut ? null : (
              <Button
                variant="default"
                aria-label={words.variations.remove(what)}
                onClick={() => change({ guarantees: guarantees.filter((_, index) => index !== at) })}
              >
                {words.variations.take}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {shut ? null : <NewPromise add={(one) => change({ guarantees: [...guarantees, one] })} />}
    </Card>
  )
}

function NewPromise({ add }: { readonly add: (one: Guarantee) => void }) {
  const [typed, setTyped] = useState({ what: '', until: '', says: '' })
  const [told, setTold] = useState(false)
  const first = useRef<HTMLInputElement>(null)
  const whole = typed.what.trim() !== '' && typed.until !== ''
  const keep = () => {
    setTold(!whole)
    first.current?.focus()
    if (!whole) return
    add({ what: typed.what.trim(), until: typed.until, says: typed.says.trim() })
    setTyped({ what: '', until: '', says: '' })
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
        <FieldGrid>
          <TextInput
            ref={first}
            label={own.what}
            value={typed.what}
            error={told && !whole ? own.incomplete : null}
            onChange={({ currentTarget }) => setTyped({ ...typed, what: currentTarget.value })}
          />
          <TextInput
            type="date"
            label={own.until}
            value={typed.until}
            onChange={({ currentTarget }) => setTyped({ ...typed, until: currentTarget.value })}
          />
          <TextInput
            label={own.note}
            value={typed.says}
            onChange={({ currentTarget }) => setTyped({ ...typed, says: currentTarget.value })}
          />
        </FieldGrid>
        <div>
          <Button type="submit" variant="default">
            {own.add}
          </Button>
        </div>
      </Stack>
    </form>
  )
}

/** What is paid, and what only the firm reads. */
export function MoneyCard({ notes: { after, change, shut } }: { readonly notes: Notes }) {
  return (
    <Card title={words.money.title}>
      <Stack>
        <FieldGrid>
          <NumberBox
            money
            label={words.money.paid}
            empty={0}
            blank
            value={after.paidPence ?? 0}
            shut={shut}
            set={(paid) => change({ paidPence: paid ?? 0 })}
          />
        </FieldGrid>
        <Textarea
          autosize
          minRows={2}
          label={words.money.notes}
          readOnly={shut}
          value={after.notes ?? ''}
          onChange={({ currentTarget }) => change({ notes: currentTarget.value })}
        />
      </Stack>
    </Card>
  )
}
