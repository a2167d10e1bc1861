import { Button, NativeSelect } from '@mantine/core'
import type { Discount } from '../../../../src-main/domain/pricing.ts'
import { DraftChoice, DraftMoney, DraftPercent, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { FieldGrid, Row } from '../../../parts/card.tsx'
import { asKind, withDiscount } from '../job-changes.ts'
import styles from '../price.module.css'

const first: Discount = { kind: 'percent', name: 'Discount', basisPoints: 500, of: 'all' }
const ofWhat = [
  { value: 'all', label: 'Everything' },
  { value: 'parts', label: 'Parts' },
  { value: 'labour', label: 'Labour' },
]

/** What is taken off, each as a line of its own on the quote. */
export function DiscountFields() {
  const { job, change } = useOpenJob()
  const discounts = job.pricing?.discounts ?? []
  return (
    <section className={styles.part} aria-label="Discounts">
      <h3>Discounts</h3>
      {discounts.map((discount, at) => (
        <DiscountRow key={at} discount={discount} at={at} />
      ))}
      <Row>
        <Button
          variant="default"
          onClick={() => change({ kind: 'alter', alter: (now) => withDiscount(now, first) })}
        >
          Add a discount
        </Button>
      </Row>
    </section>
  )
}

function DiscountRow({ discount, at }: { readonly discount: Discount; readonly at: number }) {
  const { job, change } = useOpenJob()
  const path = `pricing.discounts[${at}]`
  const nth = `discount ${at + 1}`
  const swapped = new Set(job.swaps.map(({ roomId }) => roomId))
  const rooms = job.rooms.filter(({ roomId }) => swapped.has(roomId))
  const setRoom = (roomId: string) =>
    change({ kind: 'set', path: `${path}.roomId`, value: roomId === '' ? undefined : roomId })
  const setKind = (kind: string) =>
    change({ kind: 'set', path, value: asKind(discount, kind === 'amount' ? 'amount' : 'percent') })
  return (
    <div role="group" aria-label={`Discount ${at + 1}`} className={styles.discount}>
      <FieldGrid>
        <DraftText path={`${path}.name`} label="What for" />
        <NativeSelect
          label="Reckoned as"
          value={discount.kind}
          data={[
            { value: 'percent', label: 'Percent' },
            { value: 'amount', label: 'A sum of money' },
          ]}
          onChange={({ currentTarget }) => setKind(currentTarget.value)}
        />
        {discount.kind === 'percent' ? (
          <DraftPercent path={`${path}.basisPoints`} label="Share (%)" />
        ) : (
          <DraftMoney path={`${path}.pence`} label="Sum before VAT (£)" />
        )}
        <DraftChoice path={`${path}.of`} label="Taken from" choices={ofWhat} />
        <NativeSelect
          label="In"
          value={discount.roomId ?? ''}
          data={[
            { value: '', label: 'The whole job' },
            ...rooms.map(({ roomId, name }) => ({ value: roomId, label: name })),
          ]}
          onChange={({ currentTarget }) => setRoom(currentTarget.value)}
        />
      </FieldGrid>
      <Row>
        <Button
          variant="default"
          aria-label={`Remove ${nth}`}
          onClick={() => change({ kind: 'remove', path })}
        >
          Remove
        </Button>
      </Row>
    </div>
  )
}
