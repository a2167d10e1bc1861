import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import { money } from '../../parts/figures-in-words.ts'
import { heatInWords, useHeatFirst, withHeat } from '../../parts/heat-in-words.ts'
import { GenericMark, Verdict } from '../../parts/notice.tsx'
import { Why } from '../../parts/why.tsx'
import styles from './job.module.css'
import { words } from './add-swap/add-swap.words.ts'

type Answer = AnswerOf<'emitter.choose'>
type Candidate<T> = {
  readonly candidate: T
  readonly chosen: boolean
  readonly choose: (emitter: Pick<Emitter, 'itemId'>) => void
}

/** An emitter that heats the room and fits the wall, with what it comes to. */
export function RankedRow({ candidate, chosen, choose }: Candidate<Answer['ranked'][number]>) {
  const first = useHeatFirst()
  const { name, generic, fittedPence, givesW, spareW, gaps, warnings, tie, why } = candidate
  return (
    <CandidateRow candidate={candidate} generic={generic} chosen={chosen} choose={choose}>
      <Size of={candidate} />
      <span className={styles.fitted}>
        <strong>{money(fittedPence)}</strong> {words.row.fitted}{' '}
        <Why of={words.row.whyFitted(name)} why={why} />
      </span>
      <Verdict tone="good">
        {words.row.givesToSpare(heatInWords(givesW, first), heatInWords(spareW, first))}
      </Verdict>
      {gaps.map((gap) => (
        <Verdict key={gap} tone="warn">
          {words.row.notPriced(gap)}
        </Verdict>
      ))}
      {warnings.map((warning) => (
        <Verdict key={warning} tone="warn">
          {warning}
        </Verdict>
      ))}
      {tie === undefined ? null : <span>{withHeat(tie, first)}</span>}
    </CandidateRow>
  )
}

type Sized = Pick<Emitter, 'name' | 'heightMm' | 'widthMm'>

/** Its size, where its name does not say it already. */
function Size({ of: { name, heightMm, widthMm } }: { readonly of: Sized }) {
  const size = words.row.size(heightMm, widthMm)
  return name.includes(size) ? null : <span>{words.row.inMm(size)}</span>
}

/** An emitter that does not suit, and why. It can be chosen all the same: the person was in the room. */
export function RefusedRow({ candidate, chosen, choose }: Candidate<Answer['refused'][number]>) {
  const first = useHeatFirst()
  return (
    <CandidateRow candidate={candidate} generic={candidate.generic} chosen={chosen} choose={choose}>
      <Size of={candidate} />
      <span>{words.row.gives(heatInWords(candidate.givesW, first))}</span>
      {candidate.reasons.map(({ says }) => (
        <Verdict key={says} tone="bad">
          {withHeat(says, first)}
        </Verdict>
      ))}
    </CandidateRow>
  )
}

type RowProps = Candidate<Pick<Emitter, 'itemId' | 'name'>> & {
  readonly generic: boolean
  readonly children: ReactNode
}

function CandidateRow({ candidate, generic, chosen, choose, children }: RowProps) {
  const what = chosen ? words.row.chosen : words.row.choose
  return (
    <li className={styles.candidate} data-chosen={chosen}>
      <div>
        <p>
          <span className={styles.candidateName}>{candidate.name}</span> {generic ? <GenericMark /> : null}
        </p>
        <div className={styles.facts}>{children}</div>
      </div>
      <Button
        variant={chosen ? 'filled' : 'default'}
        aria-pressed={chosen}
        aria-label={words.row.named(what, candidate.name)}
        onClick={() => choose(candidate)}
      >
        {what}
      </Button>
    </li>
  )
}
