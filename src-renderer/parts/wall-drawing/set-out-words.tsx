import { measuredOldHoles, oldHoleCount } from '../../../src-main/domain/wall.ts'
import type { ExistingEmitter } from '../../../src-main/domain/wall.ts'
import { plain } from '../figures-in-words.ts'
import { Verdict } from '../notice.tsx'
import { Why } from '../why.tsx'
import type { Placed } from './use-set-out-here.ts'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

/** What the set-out says besides the drawing: reasons, fixing, pipes, and what to look out for. */
export function SetOutWords({ placed: { setOut, fit, swap } }: { readonly placed: Placed }) {
  const clashes = new Set(fit.clashes.map(({ says }) => says))
  return (
    <div className={styles.facts}>
      <div>
        {fit.fits ? words.setOut.kept : words.setOut.notKept} <Why of={words.setOut.whyFits} why={fit.why} />
      </div>
      <div>
        {words.setOut.drill(plain(setOut.centreMm), {
          holes: setOut.holes.length,
          fixing: setOut.fixing.name,
          needsBoard: setOut.fixing.needsBoard,
        })}{' '}
        <Why of={words.setOut.whyDrill} why={setOut.why} />
      </div>
      <ul aria-label={words.setOut.pipes}>
        {setOut.pipeOffsets.map((offset) => (
          <li key={offset.side}>
            {words.setOut.pipe(offset.side, words.setOut.remedies[offset.remedy])}{' '}
            <Why of={words.setOut.whyPipe(offset.side)} why={offset.why} />
          </li>
        ))}
      </ul>
      {unmeasured(swap.existing) ? <div>{words.setOut.unmeasured}</div> : null}
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
