import { useId, useState } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import { ProblemList, Verdict, Waiting } from '../notice.tsx'
import { AddThings, nameOf } from './fields/add-things.tsx'
import type { Paths } from './place/board-paths.ts'
import { Canvas } from './canvas.tsx'
import { mm, thingsInWords } from './in-words.ts'
import type { Hung } from './place/moving.ts'
import { Numbers } from './fields/numbers.tsx'
import { freeObstacleId } from './fields/presets.ts'
import { SetOutWords } from './set-out-words.tsx'
import { TextForm } from './text-form.tsx'
import { useBoard } from './use-board.ts'
import { useRubber } from './use-rubber.ts'
import type { Placed } from './use-set-out-here.ts'
import { useSize } from './use-size.ts'
import { viewOf } from './view-of.ts'
import { firstLayers } from './view-tools.tsx'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

type At = { readonly job: Job; readonly hung: Hung; readonly paths: Paths }

/** A swap on its wall, to look at and to move about, with its numbers, and the same in words. */
export function WallBoard(at: At) {
  const board = useBoard(at)
  const { on } = board
  if (on.kind === 'asking') return <Waiting what={words.waiting} />
  const placed = on.kind === 'placed' ? on.placed : on.last
  return (
    <div className={styles.board}>
      {on.kind === 'refused' ? <ProblemList title={words.failed} problems={on.problems} /> : null}
      {placed === null ? null : <Laid {...at} board={board} placed={placed} />}
    </div>
  )
}

type Laid = At & { readonly board: ReturnType<typeof useBoard>; readonly placed: Placed }

function Laid({ board, placed, paths }: Laid) {
  const sized = useSize({ widthPx: 880, heightPx: 560 })
  const [layers, setLayers] = useState(firstLayers)
  const ids = useId()
  const obstacles = board.now.wall.obstacles ?? []
  const rubber = useRubber((kind, box) =>
    board.add({ obstacleId: freeObstacleId(obstacles), name: nameOf(kind, obstacles), kind, ...box }),
  )
  const view = viewOf(placed, { size: sized.size, layers })
  const things = thingsInWords({ view, looked: placed.looked, fixing: placed.setOut.fixing.name })
  return (
    <>
      <div className={styles.columns}>
        <Canvas
          board={board}
          placed={placed}
          sized={sized}
          layers={layers}
          setLayers={setLayers}
          rubber={rubber}
          describedBy={`${ids}-how`}
          detailsId={`${ids}-words`}
        />
        <Numbers board={board} paths={paths} placed={placed} />
      </div>
      <Standing placed={placed} />
      <p id={`${ids}-how`} className={styles.how}>
        {words.how}
      </p>
      <TextForm id={`${ids}-words`} things={things} wallName={placed.wall.name} />
      <AddThings wall={board.now.wall} add={board.add} draw={rubber.begin} drawing={rubber.kind} />
      <SetOutWords placed={placed} />
    </>
  )
}

/** Read out when it changes: where the emitter is, and whether that is good. */
function Standing({ placed: { setOut, fit } }: { readonly placed: Placed }) {
  return (
    <div role="status" className={styles.standing}>
      {fit.fits ? (
        <Verdict tone="good">{words.fits}</Verdict>
      ) : (
        <Verdict tone="bad">{words.fitsNot(fit.clashes.map(({ says }) => says).join(' '))}</Verdict>
      )}{' '}
      <span>{words.standing(mm(setOut.centreMm), mm(setOut.bottomMm))}</span>
    </div>
  )
}
