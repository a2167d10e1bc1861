import { Button } from '@mantine/core'
import { useCallback, useState } from 'react'
import { Link } from 'wouter'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Stack } from '../../parts/card.tsx'
import { Nothing, Waiting } from '../../parts/notice.tsx'
import { BuyingCard } from './buying/buying-card.tsx'
import { ChangeLine } from './change-line.tsx'
import { useCustomerLooks } from './customer-looks.ts'
import { Gaps } from './gaps.tsx'
import { groupLines } from './group-lines.ts'
import { LabourCard } from './labour-card.tsx'
import { LineTable } from './line-table.tsx'
import { LostChanges } from './lost-changes.tsx'
import { OptionsCard } from './pricing/options-card.tsx'
import styles from './price.module.css'
import { lostOverrides } from './priced-line.ts'
import { PricingDialog } from './pricing/pricing-dialog.tsx'
import { Totals } from './totals.tsx'
import { Cautions, WarmthCard } from './told-cards.tsx'
import { Walls } from './walls.tsx'
import { words as all } from './price.words.ts'

const words = all.nothing

/** Parts, labour and price of the job, each figure with its reason. */
export function PriceScreen() {
  const { job, standing, quoting, problems } = useOpenJob()
  if (job.swaps.length === 0) {
    return (
      <Nothing title={words.title}>
        <p>{words.says}</p>
        <Button component={Link} href={`/job/${job.jobId}/survey/add-swap`}>
          {words.addSwap}
        </Button>
      </Nothing>
    )
  }
  if (standing === null) {
    if (problems.length === 0 && quoting) return <Waiting what={words.working} />
    return (
      <Stack>
        <Nothing title={words.noPrice}>
          <p>{words.putRight}</p>
        </Nothing>
        <LostChanges overrides={job.overrides ?? []} />
      </Stack>
    )
  }
  return <Priced quote={standing} />
}

function Priced({ quote }: { readonly quote: Quote }) {
  const open = useOpenJob()
  const { looks } = useCustomerLooks()
  const [changing, setChanging] = useState<string | null>(null)
  const [pricing, setPricing] = useState(false)
  const openChange = useCallback((lineId: string) => setChanging(lineId), [])
  const openPricing = useCallback(() => setPricing(true), [])
  const overrides = open.job.overrides ?? none
  const changed = quote.lines.find(({ lineId }) => lineId === changing)
  const state = open.quote === null ? 'refused' : open.quoting ? 'working' : 'fresh'
  return (
    <div className={styles.layout}>
      <Stack>
        <Gaps quote={quote} />
        <LostChanges overrides={lostOverrides(overrides, quote.lines)} />
        <WarmthCard warmth={quote.warmth} />
        {groupLines(open.settled, quote.lines).map((group) => (
          <LineTable
            key={group.key}
            group={group}
            overrides={overrides}
            looks={looks}
            openChange={openChange}
          />
        ))}
        <OptionsCard />
        <LabourCard labour={quote.labour} settled={open.settled} />
        {looks ? null : <BuyingCard />}
        <Walls settled={open.settled} />
        <Cautions cautions={quote.cautions} />
      </Stack>
      <Totals quote={quote} state={state} openPricing={openPricing} />
      {changed === undefined ? null : (
        <ChangeLine
          line={changed}
          purchase={quote.internal.purchases.find(({ lineId }) => lineId === changing)}
          close={() => {
            setChanging(null)
            focusAgain(`change-${changed.lineId}`)
          }}
        />
      )}
      {pricing ? (
        <PricingDialog
          quote={quote}
          close={() => {
            setPricing(false)
            focusAgain('open-pricing')
          }}
        />
      ) : null}
    </div>
  )
}

/** A closed dialog gives the focus back to what opened it. */
function focusAgain(id: string): void {
  setTimeout(() => document.getElementById(id)?.focus(), 50)
}

const none = [] as const
