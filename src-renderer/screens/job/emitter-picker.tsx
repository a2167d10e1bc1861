import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { useHeatInWords } from '../../parts/heat-in-words.ts'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { RankedRow, RefusedRow } from './candidate-row.tsx'
import styles from './job.module.css'
import { emitterSearchId, useChooseByKeys } from './add-swap/use-choose-by-keys.ts'
import { mostShown, useCandidates } from './add-swap/use-candidates.ts'
import type { Place } from './add-swap/use-candidates.ts'
import { words } from './add-swap/add-swap.words.ts'

type Picker = {
  readonly place: Place
  readonly chosenId: string | null
  readonly choose: (emitter: Pick<Emitter, 'itemId'>) => void
}

const atOnce = 8

/** The catalogue's emitters for this wall, the cheapest fitted first, and what is wrong with those that do not suit. */
export function EmitterPicker({ place, chosenId, choose }: Picker) {
  const { settled } = useOpenJob()
  const heat = useHeatInWords()
  const [text, setText] = useState('')
  const [most, setMost] = useState(atOnce)
  const { found, current } = useCandidates(settled, place, { text, most })
  const list = useChooseByKeys(current)
  const problems = problemsOf(found.error)
  const answer = problems.length > 0 ? undefined : found.data
  return (
    <div>
      <TextInput
        id={emitterSearchId}
        type="search"
        label={words.picker.find}
        description={words.picker.findSays}
        value={text}
        onKeyDown={list.fromSearch}
        onChange={({ currentTarget }) => {
          setText(currentTarget.value)
          setMost(atOnce)
        }}
      />
      {problems.length === 0 ? null : <ProblemList title={words.picker.cannotRank} problems={problems} />}
      {found.isPending ? <Waiting what={words.picker.looking} /> : null}
      <div role="status" className={styles.foundWords}>
        {answer === undefined ? null : foundInWords(answer, heat).map((says) => <p key={says}>{says}</p>)}
      </div>
      {answer === undefined || answer.looked === 0 ? null : (
        <ul
          ref={list.ref}
          className={styles.candidates}
          aria-label={words.picker.list}
          onKeyDown={list.along}
        >
          {answer.ranked.map((one) => (
            <RankedRow key={one.itemId} candidate={one} chosen={one.itemId === chosenId} choose={choose} />
          ))}
          {answer.refused.map((one) => (
            <RefusedRow key={one.itemId} candidate={one} chosen={one.itemId === chosenId} choose={choose} />
          ))}
        </ul>
      )}
      {answer !== undefined && hasMore(answer) ? (
        <Row>
          <Button mt="sm" variant="default" onClick={() => setMost(most + atOnce)}>
            {words.picker.more}
          </Button>
        </Row>
      ) : null}
    </div>
  )
}

type Answer = AnswerOf<'emitter.choose'>

function hasMore({ ranked, refused, counted }: Answer): boolean {
  return (counted.dearer > 0 && ranked.length < mostShown) || counted.refused > refused.length
}

function foundInWords(answer: Answer, heat: (watts: number) => string): readonly string[] {
  const { looked, ranked, counted, needW, rough, othersW, flowC, returnC, notes } = answer
  const suit = ranked.length + counted.dearer
  const others = othersW > 0 ? heat(othersW) : null
  return [
    words.picker.suit(looked, suit, counted.refused),
    words.picker.needs({ need: heat(needW), rough, others, flowC, returnC }),
    ...notes,
  ]
}
