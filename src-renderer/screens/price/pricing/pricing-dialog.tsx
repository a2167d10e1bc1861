import { Button, Group, Modal } from '@mantine/core'
import type { Quote } from '../../../../src-main/domain/quote.ts'
import { DraftPercent } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Stack } from '../../../parts/card.tsx'
import { figureInWords, money } from '../../../parts/figures-in-words.ts'
import { DiscountFields } from './discount-fields.tsx'
import { marginShare } from './margin-share.ts'
import styles from '../price.module.css'
import { SellingFields } from './selling-fields.tsx'
import { TaxFields } from './tax-fields.tsx'
import { useUsualFigures } from './use-usual-figures.ts'
import { words } from './pricing.words.ts'

type Dialog = { readonly quote: Quote; readonly close: () => void }

/** How the job is priced: mark-up or margin, discounts, deposit, tax and rounding; what it comes to stays in sight. */
export function PricingDialog({ quote, close }: Dialog) {
  return (
    <Modal
      opened
      onClose={close}
      title={words.title}
      size="62rem"
      attributes={{ header: { role: 'presentation' } }}
    >
      <Stack>
        <SellingFields />
        <DiscountFields />
        <Deposit />
        <TaxFields />
      </Stack>
      <div className={styles.dialogSums} role="status">
        <SumsLine quote={quote} />
        <Button onClick={close}>{words.done}</Button>
      </div>
    </Modal>
  )
}

const depositId = 'money.depositBasisPoints'

function Deposit() {
  const { job, change } = useOpenJob()
  const usual = useUsualFigures()[depositId]
  const own = job.figures?.[depositId]
  return (
    <section className={styles.part} aria-label={words.deposit.title}>
      <h3>{words.deposit.title}</h3>
      <Group align="flex-end">
        <DraftPercent
          path={`figures["${depositId}"]`}
          label={words.deposit.share}
          hint={
            usual === undefined
              ? words.deposit.asUsual
              : words.deposit.usual(figureInWords(usual, 'BasisPoints'))
          }
        />
        {own === undefined ? null : (
          <Button
            variant="default"
            onClick={() => change({ kind: 'remove', path: `figures["${depositId}"]` })}
          >
            {words.deposit.back}
          </Button>
        )}
      </Group>
    </section>
  )
}

function SumsLine({ quote: { totals, internal } }: Pick<Dialog, 'quote'>) {
  return (
    <p>
      {words.sums.net} <strong>{money(totals.netPence)}</strong>, {words.sums.gross}{' '}
      <strong>{money(totals.grossPence)}</strong>, {words.sums.deposit}{' '}
      <strong>{money(totals.depositPence)}</strong>. {words.sums.margin}{' '}
      <strong>
        {words.sums.marginOf(money(internal.marginPence), marginShare(internal.marginPence, totals.netPence))}
      </strong>
    </p>
  )
}
