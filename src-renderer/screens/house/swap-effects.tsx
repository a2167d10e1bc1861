import { Link } from 'wouter'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card } from '../../parts/card.tsx'
import { Why } from '../../parts/why.tsx'
import { swapWhy } from './flow-answer.ts'
import type { FlowAnswer } from './flow-answer.ts'
import styles from './house.module.css'
import { words } from './house.words.ts'
import { leftOut } from './left-out.ts'

type Effects = { readonly answer: FlowAnswer; readonly swappedRooms: ReadonlySet<string> }

/** What each swap does to the house: left out of the job, and done alone. */
export function SwapEffects({ answer, swappedRooms }: Effects) {
  const { job } = useOpenJob()
  const missed = leftOut(answer, swappedRooms)
  if (missed.length === 0 && answer.swaps.length === 0 && answer.notJudged.length === 0) return null
  return (
    <Card title={words.effects} says={words.effectsSays}>
      <ol className={styles.effects} aria-label={words.effects}>
        {missed.map((one) => (
          <li key={one.roomId}>
            <p>{one.says}</p> <Why of={words.leftOut.why(one.name)} why={one.why} />
          </li>
        ))}
      </ol>
      <details className={styles.alone}>
        <summary>{words.alone}</summary>
        <p className={styles.soft}>{words.aloneSays}</p>
        <ol className={styles.effects} aria-label={words.alone}>
          {answer.swaps.map((swap, place) => (
            <li key={swap.swapId}>
              <p>
                {swap.says}
                {swap.tie === undefined ? null : <span className={styles.soft}> {swap.tie.says}</span>}
              </p>
              <Why of={words.whyAlone(swap.name)} why={swapWhy(answer, place)} />
              <Link href={`/job/${job.jobId}/survey/swap/${swap.swapId}`}>{words.whatIf(swap.roomName)}</Link>
            </li>
          ))}
          {answer.notJudged.map((swap) => (
            <li key={swap.swapId}>
              <p>{swap.says}</p>
            </li>
          ))}
        </ol>
      </details>
    </Card>
  )
}
