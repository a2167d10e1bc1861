import { measuredOldHoles, oldHoleCount } from '../../../src-main/domain/wall.ts'
import type { ExistingEmitter } from '../../../src-main/domain/wall.ts'
import { plain } from '../figures-in-words.ts'
import { Verdict } from '../notice.tsx'
import { Why } from '../why.tsx'
import type { Placed } from './use-set-out-here.ts'
import styles from './wall-drawing.module.css'

/** What the set-out says besides the drawing: reasons, fixing, pipes, and what to look out for. */
export function SetOutWords({ placed: { setOut, fit, swap } }: { readonly placed: Placed }) {
  const clashes = new Set(fit.clashes.map(({ says }) => says))
  return (
    <div className={styles.facts}>
      <div>
        {fit.fits ? 'Every clearance is kept.' : 'Not every clearance is kept.'}{' '}
        <Why of="whether it fits the wall" why={fit.why} />
      </div>
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
      {unmeasured(swap.existing) ? (
        <div>
          The old holes were counted, not measured: they are not drawn, and the new holes are not checked
          against them.
        </div>
      ) : null}
      {setOut.warnings
        .filter((warning) => !clashes.has(warning))
        .map((warning) => (
          <div key={warning}>
            <Verdict tone="warn">{warning}</Verdict>
          </div>
        ))}
    </div>
  )
}

function unmeasured(existing: ExistingEmitter | undefined): boolean {
  return oldHoleCount(existing) > 0 && measuredOldHoles(existing).length === 0
}

const remedies = {
  none: 'reaches its valve as it is.',
  longerTail: 'wants a longer tail on the valve.',
  pull: 'can be pulled across to its valve.',
  repipe: 'is cut back and led to its valve anew.',
} as const
