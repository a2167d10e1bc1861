import type { Job, Swap } from '../../src-main/domain/job.ts'
import { ProblemList, Verdict, Waiting } from './notice.tsx'
import styles from './wall-drawing/wall-drawing.module.css'
import { Picture } from './wall-drawing/picture.tsx'
import { SetOutWords } from './wall-drawing/set-out-words.tsx'
import { useSetOutHere } from './wall-drawing/use-set-out-here.ts'
import type { Placed } from './wall-drawing/use-set-out-here.ts'
import { useSize } from './wall-drawing/use-size.ts'
import { viewOf } from './wall-drawing/view-of.ts'
import { firstLayers } from './wall-drawing/view-tools.tsx'
import { words } from './words.ts'

/** A swap's emitter on its wall, to look at: the drawing, whether it fits, and what the pipes need. */
export function SwapOnWall({ job, swap }: { readonly job: Job; readonly swap: Swap }) {
  const on = useSetOutHere(job, swap)
  if (on.kind === 'asking') return <Waiting what={words.wall.waiting} />
  if (on.kind === 'refused') return <ProblemList title={words.wall.failed} problems={on.problems} />
  return <Shown placed={on.placed} />
}

function Shown({ placed }: { readonly placed: Placed }) {
  const { ref, size } = useSize({ widthPx: 880, heightPx: 560 })
  const { fits, clashes } = placed.fit
  return (
    <div className={styles.board}>
      <div ref={ref} className={styles.still}>
        <Picture view={viewOf(placed, { size, layers: { ...firstLayers, zones: false } })} />
      </div>
      <div>
        {fits ? (
          <Verdict tone="good">{words.wall.fits}</Verdict>
        ) : (
          <Verdict tone="bad">{words.wall.fitsNot}</Verdict>
        )}
      </div>
      {clashes.length === 0 ? null : (
        <ul>
          {clashes.map((clash) => (
            <li key={clash.says}>{clash.says}</li>
          ))}
        </ul>
      )}
      <SetOutWords placed={placed} />
    </div>
  )
}
