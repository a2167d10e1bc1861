import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { money, plain } from '../../parts/figures-in-words.ts'
import { GenericMark, ProblemList, Verdict, Waiting } from '../../parts/notice.tsx'
import styles from './job.module.css'
import { useCandidates } from './use-candidates.ts'
import type { Candidate, Place } from './use-candidates.ts'

type Picker = {
  readonly place: Place
  readonly chosenId: string | null
  readonly choose: (emitter: Candidate['emitter']) => void
}

const atOnce = 8

/** The catalogue's emitters, each with what it gives in this room and whether it fits this wall. */
export function EmitterPicker({ place, chosenId, choose }: Picker) {
  const { settled } = useOpenJob()
  const [text, setText] = useState('')
  const [most, setMost] = useState(atOnce)
  const { candidates, count, found, needW, rough } = useCandidates(settled, place, { text, most })
  const { flowC, returnC } = settled.survey.system
  const problems = problemsOf(found.error)
  return (
    <div>
      <TextInput
        type="search"
        label="Find an emitter"
        description="By size and kind, for example: double 600 1000, or chrome rail"
        value={text}
        onChange={({ currentTarget }) => {
          setText(currentTarget.value)
          setMost(atOnce)
        }}
      />
      {problems.length === 0 ? null : (
        <ProblemList title="The catalogue can't be searched" problems={problems} />
      )}
      {found.isPending ? <Waiting what="Looking in the catalogue" /> : null}
      <p role="status">
        {found.data === undefined ? '' : `${count} found. `}
        {needW === null
          ? ''
          : `The room needs ${plain(Math.round(needW))} W${rough ? ', by a rough guess' : ''}; what each gives is at ${flowC}/${returnC} °C. Those that fit and keep it warm come first, the cheapest of them on top.`}
      </p>
      {candidates.length === 0 ? null : (
        <ul className={styles.candidates} aria-label="Emitters found">
          {candidates.map((one) => (
            <CandidateRow
              key={one.emitter.itemId}
              candidate={one}
              needW={needW}
              chosen={one.emitter.itemId === chosenId}
              choose={choose}
            />
          ))}
        </ul>
      )}
      {count > candidates.length ? (
        <Row>
          <Button mt="sm" variant="default" onClick={() => setMost(most + atOnce)}>
            Show more emitters
          </Button>
        </Row>
      ) : null}
    </div>
  )
}

type RowProps = {
  readonly candidate: Candidate
  readonly needW: number | null
  readonly chosen: boolean
  readonly choose: Picker['choose']
}

function CandidateRow({ candidate, needW, chosen, choose }: RowProps) {
  const { emitter, fromPence } = candidate
  return (
    <li className={styles.candidate} data-chosen={chosen}>
      <div>
        <p>
          <span className={styles.candidateName}>{emitter.name}</span>{' '}
          {emitter.generic ? <GenericMark /> : null}
        </p>
        <div className={styles.facts}>
          <span>
            {emitter.heightMm} high x {emitter.widthMm} wide
          </span>
          {fromPence === null ? <span>No price yet</span> : <span>costs you from {money(fromPence)}</span>}
          <WarmWords candidate={candidate} needW={needW} />
          <FitWords candidate={candidate} />
        </div>
      </div>
      <Button
        variant={chosen ? 'filled' : 'default'}
        aria-pressed={chosen}
        aria-label={`${chosen ? 'Chosen' : 'Choose'}: ${emitter.name}`}
        onClick={() => choose(emitter)}
      >
        {chosen ? 'Chosen' : 'Choose'}
      </Button>
    </li>
  )
}

type Judged = Pick<RowProps, 'candidate' | 'needW'>

function WarmWords({ candidate: { givesW }, needW }: Judged) {
  if (givesW === null) return null
  const gives = `gives ${plain(Math.round(givesW))} W`
  if (needW === null) return <span>{gives}</span>
  const tone = givesW >= needW ? 'good' : 'bad'
  return <Verdict tone={tone}>{tone === 'good' ? gives : `${gives}: not enough`}</Verdict>
}

function FitWords({ candidate: { fit } }: Pick<Judged, 'candidate'>) {
  if (fit === null) return null
  if (fit.fits) return <Verdict tone="good">fits the wall</Verdict>
  return <Verdict tone="bad">{fit.clashes[0]?.says ?? 'does not fit the wall'}</Verdict>
}
