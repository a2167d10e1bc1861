import { Button, Checkbox, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import type { Order, OrderLine } from '../../../../src-main/domain/follow-up/order.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { typedNumber } from '../../../draft/typed-number.ts'
import { FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { plain } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList } from '../../../parts/notice.tsx'
import { amount } from '../amount.ts'
import styles from '../van.module.css'
import { words } from './orders.words.ts'
import type { OrderWork } from './use-orders.ts'

type Props = { readonly order: Order; readonly work: OrderWork; readonly close: () => void }

const openOf = ({ packs, deliveredPacks }: OrderLine) => packs - deliveredPacks

/** What came, pack by pack; all that was still to come unless something else is typed. */
export function DeliverForm({ order, work, close }: Props) {
  const open = order.lines.filter((line) => openOf(line) > 0)
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({})
  const [more, setMore] = useState<More>({ onDay: '', says: '', toVan: false })
  const [tried, setTried] = useState(false)
  const textOf = (line: OrderLine) => typed[line.lineNo] ?? String(openOf(line))
  const came = open.map((line) => ({ lineNo: line.lineNo, packs: packsIn(textOf(line)) }))
  const lines = came.flatMap(({ lineNo, packs }) =>
    packs === null || packs === 0 ? [] : [{ lineNo, packs }],
  )
  const submit = (event: FormEvent) => {
    event.preventDefault()
    setTried(true)
    if (lines.length === 0 || came.some(({ packs }) => packs === null)) return
    work.deliver.mutate({ orderId: order.orderId, lines, ...moreOf(more) }, { onSuccess: close })
  }
  const problems = sentencesOf(work.deliver.error)
  return (
    <form className={styles.form} noValidate onSubmit={submit}>
      <Stack>
        <p>{words.deliver.says}</p>
        <ul className={styles.plain} aria-label={words.order.columns.open}>
          {open.map((line) => (
            <li key={line.lineNo} className={styles.cameRow}>
              <span className={styles.grow}>{line.name}</span>
              <TextInput
                inputMode="numeric"
                className={styles.few}
                aria-label={words.deliver.packs(line.name)}
                value={textOf(line)}
                error={tried && packsIn(textOf(line)) === null ? words.deliver.wrong : undefined}
                onChange={({ currentTarget }) => setTyped({ ...typed, [line.lineNo]: currentTarget.value })}
              />
              <span className={styles.stillOpen}>{words.deliver.of(plain(openOf(line)))}</span>
            </li>
          ))}
        </ul>
        <MoreFields more={more} set={setMore} />
        {tried && lines.length === 0 ? <p role="alert">{words.deliver.nothing}</p> : null}
        {problems.length === 0 ? null : <ProblemList title={words.deliver.notNoted} problems={problems} />}
        <Row>
          <Button type="submit" loading={work.deliver.isPending}>
            {words.deliver.keep}
          </Button>
          <Button variant="default" onClick={close}>
            {words.deliver.leave}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

/** Whole packs that were typed; null for anything else. */
function packsIn(text: string): number | null {
  const packs = typedNumber(text) ?? 0
  return typeof packs === 'number' && Number.isInteger(packs) && packs >= 0 ? packs : null
}

type More = { readonly onDay: string; readonly says: string; readonly toVan: boolean }

function moreOf({ onDay, says, toVan }: More) {
  return {
    ...(onDay === '' ? {} : { onDay }),
    ...(says.trim() === '' ? {} : { says: says.trim() }),
    ...(toVan ? { toVan } : {}),
  }
}

function MoreFields({ more, set }: { readonly more: More; readonly set: (more: More) => void }) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  const today = about.data?.today ?? ''
  return (
    <>
      <FieldGrid>
        <TextInput
          type="date"
          label={words.deliver.onDay}
          value={more.onDay === '' ? today : more.onDay}
          max={today}
          onChange={({ currentTarget }) => set({ ...more, onDay: currentTarget.value })}
        />
        <TextInput
          label={words.deliver.note}
          value={more.says}
          onChange={({ currentTarget }) => set({ ...more, says: currentTarget.value })}
        />
      </FieldGrid>
      <Checkbox
        label={words.deliver.toVan}
        description={words.deliver.toVanSays}
        checked={more.toVan}
        onChange={({ currentTarget }) => set({ ...more, toVan: currentTarget.checked })}
      />
    </>
  )
}

/** What of a delivery went into the van's stock. */
export function Booked({ booked }: { readonly booked: AnswerOf<'order.deliver'>['booked'] }) {
  if (booked.length === 0) return <Notice tone="good" title={words.deliver.bookedNone} />
  return (
    <Notice tone="good" title={words.deliver.booked}>
      <ul>
        {booked.map(({ itemId, name, quantity, unit }) => (
          <li key={itemId}>{`${name}: ${amount(quantity, unit)}`}</li>
        ))}
      </ul>
    </Notice>
  )
}
