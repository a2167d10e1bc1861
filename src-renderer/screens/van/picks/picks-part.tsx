import { Link } from 'wouter'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { dayInWords } from '../../../parts/figures-in-words.ts'
import { ProblemList, Verdict, Waiting } from '../../../parts/notice.tsx'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import { ToPick } from './to-pick.tsx'

/** What waits to be picked, and the pick lists that were made. */
export function PicksPart() {
  const pickings = useAsk('picking.list', {})
  const problems = sentencesOf(pickings.error)
  if (problems.length > 0) return <ProblemList title={words.notFound} problems={problems} />
  if (pickings.data === undefined) return <Waiting what={words.picks.looking} />
  const made = pickings.data.pickings
  return (
    <Stack>
      <ToPick pickings={made} />
      <Card title={words.picks.title}>
        {made.length === 0 ? (
          <p className={styles.soft}>{words.picks.none}</p>
        ) : (
          <ul className={styles.plain} aria-label={words.picks.title}>
            {made.map((picking) => (
              <Made key={picking.pickingNo} picking={picking} />
            ))}
          </ul>
        )}
      </Card>
    </Stack>
  )
}

export type PickingRow = AnswerOf<'picking.list'>['pickings'][number]

function Made({ picking }: { readonly picking: PickingRow }) {
  const { pickingNo, title, madeOn, closedOn, ticked, lines, short, quoteIds } = picking
  return (
    <li className={styles.made}>
      <div className={styles.grow}>
        <Link href={`/van/pick/${pickingNo}`} className={styles.go}>
          {words.picks.name(pickingNo, title)}
        </Link>
        <span className={styles.soft}>
          {[quoteIds.join(', '), words.picks.made(dayInWords(madeOn))].join(' · ')}
        </span>
      </div>
      <span>{words.pick.progress(ticked, lines, short)}</span>
      {closedOn === undefined ? (
        <Verdict tone="warn">{words.picks.open}</Verdict>
      ) : (
        <Verdict tone="good">{words.picks.closed(dayInWords(closedOn))}</Verdict>
      )}
    </li>
  )
}
