import type { AnswerOf } from '../../src-main/contract/requests.ts'
import type { Job, Swap } from '../../src-main/domain/job.ts'
import { plain } from './figures-in-words.ts'
import { ProblemList, Verdict, Waiting } from './notice.tsx'
import styles from './swap-on-wall.module.css'
import { useSwapOnWall } from './use-swap-on-wall.ts'
import type { OnWall } from './use-swap-on-wall.ts'
import { Why } from './why.tsx'

type Placed = Extract<OnWall, { readonly kind: 'placed' }>

/** A swap's emitter on its wall: the drawing, whether it fits, and what the pipes need. */
export function SwapOnWall({ job, swap }: { readonly job: Job; readonly swap: Swap }) {
  const on = useSwapOnWall(job, swap)
  if (on.kind === 'asking') return <Waiting what="Setting it out on the wall" />
  if (on.kind === 'refused') return <ProblemList title="It can't be set out yet" problems={on.problems} />
  return (
    <div className={styles.layout}>
      <img className={styles.picture} src={on.picture} alt={on.pictureInWords} />
      <div className={styles.facts}>
        <FitWords fit={on.fit} />
        <SetOutWords on={on} />
      </div>
    </div>
  )
}

function FitWords({ fit }: { readonly fit: AnswerOf<'wall.fit'> }) {
  return (
    <>
      <div>
        {fit.fits ? (
          <Verdict tone="good">It fits the wall</Verdict>
        ) : (
          <Verdict tone="bad">It does not fit</Verdict>
        )}{' '}
        <Why of="whether it fits the wall" why={fit.why} />
      </div>
      {fit.clashes.length === 0 ? null : (
        <ul>
          {fit.clashes.map((clash) => (
            <li key={clash.says}>{clash.says}</li>
          ))}
        </ul>
      )}
    </>
  )
}

function SetOutWords({ on }: { readonly on: Placed }) {
  const { setOut } = on
  return (
    <>
      <div>
        Centre line {plain(setOut.centreMm)} mm from the wall’s left end, {setOut.holes.length} holes,{' '}
        {setOut.fixing.name}
        {setOut.fixing.needsBoard ? ', with a backing board across the studs' : ''}.{' '}
        <Why of="where to drill" why={setOut.why} />
      </div>
      <ul aria-label="Pipes">
        {setOut.pipeOffsets.map((offset) => (
          <li key={offset.side}>
            {offset.side === 'left' ? 'Left' : 'Right'} pipe: {remedies[offset.remedy]}{' '}
            <Why of={`what the ${offset.side} pipe needs`} why={offset.why} />
          </li>
        ))}
      </ul>
      {setOut.warnings.map((warning) => (
        <div key={warning}>
          <Verdict tone="warn">{warning}</Verdict>
        </div>
      ))}
    </>
  )
}

const remedies = {
  none: 'reaches its valve as it is.',
  longerTail: 'wants a longer tail on the valve.',
  pull: 'can be pulled across to its valve.',
  repipe: 'is cut back and led to its valve anew.',
} as const
