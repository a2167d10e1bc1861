import { Button, Switch } from '@mantine/core'
import { memo } from 'react'
import { Link } from 'wouter'
import { reverseChargeWording } from '../../../src-main/domain/pricing.ts'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { figureInWords, money } from '../../parts/figures-in-words.ts'
import { useWhy, WhyButton, WhyTree } from '../../parts/why.tsx'
import { useCustomerLooks } from './customer-looks.ts'
import { marginShare } from './pricing/margin-share.ts'
import styles from './price.module.css'
import { words as all } from './price.words.ts'

const words = all.totals

type Sums = {
  readonly quote: Quote
  readonly state: 'fresh' | 'working' | 'refused'
  readonly openPricing: () => void
}

/** What it comes to, always in sight; and, set apart, what only the firm may see. */
export function Totals({ quote, state, openPricing }: Sums) {
  const { job } = useOpenJob()
  const { looks, setLooks } = useCustomerLooks()
  const { jobId } = job
  const why = useWhy(words.why)
  return (
    <aside className={styles.totals} aria-label={words.named}>
      <div className={styles.sums}>
        <div className={styles.sumsHead}>
          <h2>{words.title}</h2>
          {looks ? null : <WhyButton {...why} />}
        </div>
        <CustomerSums quote={quote} />
        <p className={styles.fresh} role="status">
          {words.states[state]}
        </p>
        {looks || !why.open ? null : (
          <div id={why.regionId}>
            <WhyTree why={quote.why} />
          </div>
        )}
      </div>
      {looks ? null : <OwnSums quote={quote} />}
      <OptionSums quote={quote} />
      <Ways jobId={jobId} looks={looks} setLooks={setLooks} openPricing={openPricing} />
    </aside>
  )
}

type WaysProps = Pick<Sums, 'openPricing'> & ReturnType<typeof useCustomerLooks> & { readonly jobId: string }

const Ways = memo(function Ways({ jobId, looks, setLooks, openPricing }: WaysProps) {
  return (
    <>
      <Switch
        size="md"
        label={words.looks}
        description={looks ? words.hidden : undefined}
        checked={looks}
        onChange={({ currentTarget }) => setLooks(currentTarget.checked)}
      />
      <div className={styles.ways2}>
        {looks ? null : (
          <Button id="open-pricing" px="sm" variant="default" aria-haspopup="dialog" onClick={openPricing}>
            {words.pricing}
          </Button>
        )}
        <Button px="sm" component={Link} href={`/job/${jobId}/papers`}>
          {words.papers}
        </Button>
      </div>
    </>
  )
})

function CustomerSums({ quote: { totals } }: Pick<Sums, 'quote'>) {
  return (
    <>
      <dl data-totals>
        <Sum label={words.net} value={money(totals.netPence)} />
        {totals.taxes
          .filter((tax) => tax.netPence !== 0)
          .map((tax) => (
            <Sum
              key={tax.rateKey}
              label={words.rate(
                tax.rateName,
                figureInWords(tax.basisPoints, 'BasisPoints').replace(' ', '\u00a0'),
              )}
              value={money(tax.taxPence)}
            />
          ))}
        <div className={`${styles.sum} ${styles.gross}`}>
          <dt>{words.gross}</dt>
          <dd>{money(totals.grossPence)}</dd>
        </div>
        <Sum label={words.deposit} value={money(totals.depositPence)} />
        {totals.reverseChargePence === undefined ? null : (
          <Sum label={words.reverseCharge} value={money(totals.reverseChargePence)} />
        )}
      </dl>
      {totals.reverseChargePence === undefined ? null : <p>{reverseChargeWording}</p>}
    </>
  )
}

function OwnSums({ quote: { internal, totals } }: Pick<Sums, 'quote'>) {
  return (
    <section className={`${styles.own} ${styles.ownOnly}`} aria-label={words.own}>
      <h2>{words.own}</h2>
      <dl>
        <Sum label={words.cost} value={money(internal.costPence)} />
        <Sum label={words.labour} value={money(internal.labourCostPence)} />
        <Sum
          label={words.margin}
          value={words.marginOf(
            money(internal.marginPence),
            marginShare(internal.marginPence, totals.netPence),
          )}
        />
      </dl>
    </section>
  )
}

function OptionSums({ quote }: Pick<Sums, 'quote'>) {
  if (quote.options.length === 0) return null
  const inside = quote.options.filter(({ chosen }) => chosen)
  const outside = quote.options.filter(({ chosen }) => !chosen)
  return (
    <div className={styles.own}>
      {inside.length === 0 ? null : <OptionList title={words.chosen} options={inside} />}
      {outside.length === 0 ? null : <OptionList title={words.outside} options={outside} />}
    </div>
  )
}

function OptionList({ title, options }: { readonly title: string; readonly options: Quote['options'] }) {
  return (
    <>
      <h2>{title}</h2>
      <dl>
        {options.map((option) => (
          <Sum key={option.optionId} label={option.name} value={money(option.netPence)} />
        ))}
      </dl>
    </>
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
