import { Button, NativeSelect } from '@mantine/core'
import type { Discount } from '../../../../src-main/domain/pricing.ts'
import { DraftChoice, DraftMoney, DraftPercent, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { FieldGrid, Row } from '../../../parts/card.tsx'
import { asKind, withDiscount } from '../job-changes.ts'
import styles from '../price.module.css'
import { words as all } from './pricing.words.ts'

const words = all.discounts

const first: Discount = { kind: 'percent', name: words.first, basisPoints: 500, of: 'all' }
const ofWhat = [
  { value: 'all', label: words.of.all },
  { value: 'parts', label: words.of.parts },
  { value: 'labour', label: words.of.labour },
]

/** What is taken off, each as a line of its own on the quote. */
export function DiscountFields() {
  const { job, change } = useOpenJob()
  const discounts = job.pricing?.discounts ?? []
  return (
    <section className={styles.part} aria-label={words.title}>
      <h3>{words.title}</h3>
      {discounts.map((discount, at) => (
        <DiscountRow key={at} discount={discount} at={at} />
      ))}
      <Row>
        <Button
          variant="default"
          onClick={() => change({ kind: 'alter', alter: (now) => withDiscount(now, first) })}
        >
          {words.add}
        </Button>
      </Row>
    </section>
  )
}

function DiscountRow({ discount, at }: { readonly discount: Discount; readonly at: number }) {
  const { job, change } = useOpenJob()
  const path = `pricing.discounts[${at}]`
  const swapped = new Set(job.swaps.map(({ roomId }) => roomId))
  const rooms = job.rooms.filter(({ roomId }) => swapped.has(roomId))
  const setRoom = (roomId: string) =>
    change({ kind: 'set', path: `${path}.roomId`, value: roomId === '' ? undefined : roomId })
  const setKind = (kind: string) =>
    change({ kind: 'set', path, value: asKind(discount, kind === 'amount' ? 'amount' : 'percent') })
  return (
    <div role="group" aria-label={words.nth(at + 1)} className={styles.discount}>
      <FieldGrid>
        <DraftText path={`${path}.name`} label={words.what} />
        <NativeSelect
          label={words.kind}
          value={discount.kind}
          data={[
            { value: 'percent', label: words.kinds.percent },
            { value: 'amount', label: words.kinds.amount },
          ]}
          onChange={({ currentTarget }) => setKind(currentTarget.value)}
        />
        {discount.kind === 'percent' ? (
          <DraftPercent path={`${path}.basisPoints`} label={words.share} />
        ) : (
          <DraftMoney path={`${path}.pence`} label={words.sum} />
        )}
        <DraftChoice path={`${path}.of`} label={words.from} choices={ofWhat} />
        <NativeSelect
          label={words.room}
          value={discount.roomId ?? ''}
          data={[
            { value: '', label: words.wholeJob },
            ...rooms.map(({ roomId, name }) => ({ value: roomId, label: name })),
          ]}
          onChange={({ currentTarget }) => setRoom(currentTarget.value)}
        />
      </FieldGrid>
      <Row>
        <Button
          variant="default"
          aria-label={words.removeNth(at + 1)}
          onClick={() => change({ kind: 'remove', path })}
        >
          {words.remove}
        </Button>
      </Row>
    </div>
  )
}
