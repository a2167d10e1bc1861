import { Link } from 'wouter'
import { useGoToField } from '../../draft/go-to-field.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { Nothing, Notice, ProblemList, Waiting } from '../../parts/notice.tsx'
import { Why } from '../../parts/why.tsx'
import { houseWhy } from './flow-answer.ts'
import type { FlowAnswer } from './flow-answer.ts'
import styles from './house.module.css'
import { compareSentence, houseSentence } from './house-sentence.ts'
import { words } from './house.words.ts'
import { BalanceCard } from './balance-card.tsx'
import { OpenRooms } from './open-rooms.tsx'
import { RoomScale } from './room-scale.tsx'
import { SwapEffects } from './swap-effects.tsx'
import { useHouse } from './use-house.ts'
import { WaterCard } from './water-card.tsx'

/** The house as one: the flow temperature it takes, the room that decides it, and what each swap does. */
export function HouseScreen() {
  const { job, settled } = useOpenJob()
  const goTo = useGoToField(job)
  const { ready, answer, problems } = useHouse()
  const survey = `/job/${job.jobId}/survey`
  if (!ready) {
    return (
      <Nothing title={words.noRooms}>
        <p>{words.noRoomsSays}</p>
        <Link href={`${survey}/add-room`}>{words.addRoom}</Link>
      </Nothing>
    )
  }
  const swaps = settled.swaps.length
  return (
    <Stack>
      {swaps === 0 ? (
        <Notice tone="warn" title={words.noSwaps}>
          <p>{words.noSwapsSays}</p>
          <Link href={`${survey}/add-swap`}>{words.addSwap}</Link>
        </Notice>
      ) : null}
      {problems.length > 0 ? (
        <ProblemList title={words.refused} problems={problems} goTo={goTo} />
      ) : answer === null ? (
        <Waiting what={words.asking} />
      ) : (
        <Found answer={answer} swaps={swaps} />
      )}
      <BalanceCard />
      <WaterCard />
      <Assumed assumed={answer?.assumed ?? []} />
    </Stack>
  )
}

function Found({ answer, swaps }: { readonly answer: FlowAnswer; readonly swaps: number }) {
  const { settled } = useOpenJob()
  const swappedRooms = new Set(settled.swaps.map(({ roomId }) => roomId))
  return (
    <>
      <Answer answer={answer} swaps={swaps} />
      <OpenRooms answer={answer} />
      <RoomScale answer={answer} swappedRooms={swappedRooms} />
      <SwapEffects answer={answer} swappedRooms={swappedRooms} />
    </>
  )
}

function Answer({ answer, swaps }: { readonly answer: FlowAnswer; readonly swaps: number }) {
  const compared = compareSentence(answer, swaps)
  return (
    <Card title={words.title}>
      <div role="status">
        <p className={styles.answer}>{houseSentence(answer, swaps)}</p>
        {compared === null ? null : <p>{compared}</p>}
      </div>
      <div className={styles.answerWhy}>
        <Why of={words.whyHouse} why={houseWhy(answer, 'after')} />
      </div>
    </Card>
  )
}

/** So many are read at a glance; a large house takes more as given, which then lie folded up. */
const atAGlance = 8

function Assumed({ assumed }: { readonly assumed: readonly string[] }) {
  if (assumed.length === 0) return null
  const shown = assumed.length <= atAGlance + 1 ? assumed : assumed.slice(0, atAGlance)
  const rest = assumed.slice(shown.length)
  return (
    <Card title={words.assumed}>
      <Sentences of={shown} />
      {rest.length === 0 ? null : (
        <details className={styles.alone}>
          <summary>{words.moreAssumed(rest.length)}</summary>
          <Sentences of={rest} />
        </details>
      )}
    </Card>
  )
}

function Sentences({ of }: { readonly of: readonly string[] }) {
  return (
    <ul className={styles.assumed}>
      {of.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  )
}
