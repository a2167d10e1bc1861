import { Button } from '@mantine/core'
import { Link } from 'wouter'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { figureInWords, money } from '../../parts/figures-in-words.ts'
import { Why } from '../../parts/why.tsx'
import styles from './price.module.css'

type Sums = { readonly quote: Quote; readonly fresh: boolean }

/** What it comes to, always in sight; and, set apart, what only the firm may see. */
export function Totals({ quote, fresh }: Sums) {
  const { job } = useOpenJob()
  return (
    <aside className={styles.totals} aria-label="What it comes to">
      <div className={styles.sums}>
        <h2>The customer pays</h2>
        <CustomerSums quote={quote} />
        <p className={styles.fresh} role="status">
          {fresh ? '' : 'Working it out again …'}
        </p>
        <Why of="the whole price" why={quote.why} />
      </div>
      <OptionSums quote={quote} />
      <div className={`${styles.own} ${styles.ownOnly}`}>
        <h2>For you only</h2>
        <dl>
          <Sum label="Cost to you" value={money(quote.internal.costPence)} />
          <Sum label="of which labour" value={money(quote.internal.labourCostPence)} />
          <Sum label="Margin" value={money(quote.internal.marginPence)} />
        </dl>
        <p className={styles.under}>On no customer paper.</p>
      </div>
      <Button component={Link} href={`/job/${job.jobId}/papers`}>
        On to the papers
      </Button>
    </aside>
  )
}

function CustomerSums({ quote: { totals } }: Pick<Sums, 'quote'>) {
  return (
    <dl>
      <Sum label="Before VAT" value={money(totals.netPence)} />
      {totals.taxes
        .filter((tax) => tax.netPence !== 0)
        .map((tax) => (
          <Sum
            key={tax.rateKey}
            label={`${tax.rateName}, ${figureInWords(tax.basisPoints, 'BasisPoints')}`}
            value={money(tax.taxPence)}
          />
        ))}
      <div className={`${styles.sum} ${styles.gross}`}>
        <dt>With VAT</dt>
        <dd>{money(totals.grossPence)}</dd>
      </div>
      <Sum label="Deposit asked" value={money(totals.depositPence)} />
    </dl>
  )
}

function OptionSums({ quote }: Pick<Sums, 'quote'>) {
  const open = quote.options.filter((option) => !option.chosen)
  if (open.length === 0) return null
  return (
    <div className={styles.own}>
      <h2>Options, outside the total</h2>
      <dl>
        {open.map((option) => (
          <Sum key={option.optionId} label={option.name} value={money(option.netPence)} />
        ))}
      </dl>
    </div>
  )
}

function Sum({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <div className={styles.sum}>
      <dt>{label}</dt>
      <dd>{value}</dd>
    </div>
  )
}
