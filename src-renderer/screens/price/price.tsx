import { Button } from '@mantine/core'
import { Link } from 'wouter'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { Nothing, Verdict, Waiting } from '../../parts/notice.tsx'
import { SwapOnWall } from '../../parts/swap-on-wall.tsx'
import { Why } from '../../parts/why.tsx'
import { Gaps } from './gaps.tsx'
import { groupLines } from './group-lines.ts'
import { LabourCard } from './labour-card.tsx'
import { LineTable } from './line-table.tsx'
import styles from './price.module.css'
import { Totals } from './totals.tsx'

/** Parts, labour and price of the job, each figure with its reason. */
export function PriceScreen() {
  const { job, quote, quoting, problems } = useOpenJob()
  if (job.swaps.length === 0) {
    return (
      <Nothing title="Nothing to price yet">
        <p>A price comes from swaps: one emitter for another on one wall.</p>
        <Button component={Link} href={`/job/${job.jobId}/survey/add-swap`}>
          Add a swap
        </Button>
      </Nothing>
    )
  }
  if (quote === null) {
    if (problems.length === 0 && quoting) return <Waiting what="Working out parts and price" />
    return (
      <Nothing title="There is no price yet">
        <p>Put right what stands above; each sentence leads to its field.</p>
      </Nothing>
    )
  }
  return <Priced quote={quote} />
}

function Priced({ quote }: { readonly quote: Quote }) {
  const { settled, quoting } = useOpenJob()
  return (
    <div className={styles.layout}>
      <Stack>
        <Gaps gaps={quote.gaps} />
        <WarmthCard quote={quote} />
        {groupLines(settled, quote.lines).map((group) => (
          <LineTable key={group.key} group={group} />
        ))}
        <LabourCard labour={quote.labour} />
        <Walls />
        <Cautions quote={quote} />
      </Stack>
      <Totals quote={quote} fresh={!quoting} />
    </div>
  )
}

function WarmthCard({ quote }: { readonly quote: Quote }) {
  return (
    <Card title="Is each room warm?">
      <ul className={styles.plainList}>
        {quote.warmth.map((one) => (
          <li key={one.swapId}>
            <strong>{one.roomName}</strong>{' '}
            <Verdict tone={one.enough ? 'good' : 'bad'}>{one.enough ? 'Warm enough' : 'Too cold'}</Verdict>{' '}
            {one.says} <Why of={`warmth of the ${one.roomName}`} why={one.why} />
          </li>
        ))}
      </ul>
    </Card>
  )
}

function Walls() {
  const { settled } = useOpenJob()
  return settled.swaps.map((swap) => {
    const room = settled.rooms.find((one) => one.roomId === swap.roomId)
    return (
      <Card key={swap.swapId} title={`On the wall: ${room?.name ?? ''}`}>
        <SwapOnWall job={settled} swap={swap} />
      </Card>
    )
  })
}

function Cautions({ quote }: { readonly quote: Quote }) {
  if (quote.cautions.length === 0) return null
  return (
    <Card title="Cautions" says="They follow from the survey. Local codes and licensed people come first.">
      <ul className={styles.plainList}>
        {quote.cautions.map((caution) => (
          <li key={caution.cautionId}>
            {caution.says} <Why of={caution.says} why={caution.because} />
          </li>
        ))}
      </ul>
    </Card>
  )
}
