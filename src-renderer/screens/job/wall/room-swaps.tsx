import { useMemo } from 'react'
import { Link } from 'wouter'
import type { Job, Swap } from '../../../../src-main/domain/job.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card } from '../../../parts/card.tsx'
import { Verdict, Waiting } from '../../../parts/notice.tsx'
import { SmallPicture } from '../../../parts/wall-drawing/small-picture.tsx'
import { useSetOutHere } from '../../../parts/wall-drawing/use-set-out-here.ts'
import type { Placed } from '../../../parts/wall-drawing/use-set-out-here.ts'
import { useSize } from '../../../parts/wall-drawing/use-size.ts'
import { viewOf } from '../../../parts/wall-drawing/view-of.ts'
import { firstLayers } from '../../../parts/wall-drawing/view-tools.tsx'
import styles from './room-swaps.module.css'
import { words } from './wall.words.ts'

/** Every swap of a room on its wall, small; each leads to its own page. */
export function RoomSwaps({ roomId }: { readonly roomId: string }) {
  const { job } = useOpenJob()
  const swaps = job.swaps.filter((swap) => swap.roomId === roomId)
  if (swaps.length === 0) return null
  return (
    <Card title={swaps.length === 1 ? words.swaps.one : words.swaps.several}>
      <ul className={styles.swaps}>
        {swaps.map((swap) => (
          <SwapBox key={swap.swapId} job={job} swap={swap} />
        ))}
      </ul>
    </Card>
  )
}

function SwapBox({ job, swap }: { readonly job: Job; readonly swap: Swap }) {
  const on = useSetOutHere(job, swap)
  const room = job.rooms.find(({ roomId }) => roomId === swap.roomId)
  const wallName = room?.walls.find(({ wallId }) => wallId === swap.wallId)?.name ?? words.swaps.noWall
  const placed = on.kind === 'placed' ? on.placed : on.kind === 'refused' ? on.last : null
  const name = placed === null ? words.swaps.noName : placed.emitter.name
  return (
    <li className={styles.swap}>
      <h3>
        <Link className={styles.way} href={`/job/${job.jobId}/survey/swap/${swap.swapId}`}>
          {words.swaps.named(name, wallName)}
        </Link>
      </h3>
      {on.kind === 'asking' ? <Waiting what={words.swaps.settingOut} /> : null}
      {placed === null ? null : <Small placed={placed} />}
      {on.kind === 'refused' ? (
        <p>
          <Verdict tone="bad">{on.problems.map(({ message }) => message).join(' ')}</Verdict>
        </p>
      ) : null}
      {on.kind === 'placed' ? (
        <p>
          {on.placed.fit.fits ? (
            <Verdict tone="good">{words.swaps.fits}</Verdict>
          ) : (
            <Verdict tone="bad">{words.swaps.fitsNot(on.placed.fit.clashes[0]?.says ?? '')}</Verdict>
          )}
        </p>
      ) : null}
    </li>
  )
}

/** The engine's own drawing, as on the swap's page, without what is only wanted while it is moved about. */
function Small({ placed }: { readonly placed: Placed }) {
  const { ref, size } = useSize({ widthPx: 420, heightPx: 320 })
  const view = useMemo(
    () => viewOf(placed, { size, layers: { ...firstLayers, zones: false } }),
    [placed, size],
  )
  return (
    <div ref={ref} className={styles.picture}>
      <SmallPicture view={view} size={size} />
    </div>
  )
}
