import { useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Obstacle } from '../../../src-main/domain/wall.ts'
import { valueAt } from '../../draft/path.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { writtenOf } from './place/board-paths.ts'
import type { Paths } from './place/board-paths.ts'
import type { PlaceMm } from './place/geometry.ts'
import type { Handle } from './handles.tsx'
import { movedTo, stepOf } from './place/moving.ts'
import type { Hung, Thing } from './place/moving.ts'
import { bottomGuides, edgeGuides, emitterGuides, snapped, wholeMm } from './place/snapping.ts'
import type { Lines } from './use-moves.ts'
import { useSetOutHere } from './use-set-out-here.ts'
import type { Placed } from './use-set-out-here.ts'
import { words } from './wall-drawing.words.ts'

const noLines: Lines = { x: null, y: null }

type Open = { readonly job: Job; readonly hung: Hung; readonly paths: Paths }

/**
 * What stands on a wall, as it is while it is being moved: a drag is looked at here and goes into the job when it ends, as one step;
 * arrow keys write at once, and all of them until the thing is left are one step.
 */
export function useBoard({ job, hung, paths }: Open) {
  const { change } = useOpenJob()
  const [preview, setPreview] = useState<Hung | null>(null)
  const [lines, setLines] = useState<Lines>(noLines)
  const [chosen, setChosen] = useState<Thing>('emitter')
  const keys = useKeys({ job, hung, paths })
  const now = preview ?? hung
  const on = useSetOutHere(job, now.swap, now.wall)
  const clear = () => {
    setPreview(null)
    setLines(noLines)
  }
  return {
    now,
    on,
    lines,
    chosen,
    choose: setChosen,
    settle: keys.settle,
    key: keys.key,
    takeBack: clear,
    /** While the pointer drags. */
    drag: (handle: Handle, to: PlaceMm, { placed, reachMm }: { placed: Placed; reachMm: number }) => {
      const snap = snapTo(hung, handle, { to, placed, reachMm })
      setLines({ x: snap.x.guide, y: snap.y.guide })
      setPreview(movedTo(hung, handle.thing, { xMm: snap.x.mm, yMm: snap.y.mm }))
    },
    drop: (thing: Thing) => {
      if (preview !== null) {
        keys.settle()
        keys.write(preview, thing)
        keys.settle()
      }
      clear()
    },
    add: (obstacle: Obstacle) => {
      change({ kind: 'add', path: `${paths.wall}.obstacles`, value: obstacle })
      setChosen({ obstacleId: obstacle.obstacleId })
    },
  }
}

/** Writing a moved thing into the job, and what the keys do to it. */
function useKeys({ job, hung, paths }: Open) {
  const { change } = useOpenJob()
  const run = useRef<ReturnType<typeof writtenOf> | null>(null)
  const write = (next: Hung, thing: Thing) => {
    const written = writtenOf(next, thing, paths)
    run.current = written
    change({ kind: 'set', ...written })
  }
  const settle = () => {
    run.current = null
    change({ kind: 'settle' })
  }
  /** True when the key was one of ours. */
  const key = (handle: Handle, event: KeyboardEvent): boolean => {
    if (event.key === 'Escape' && run.current !== null) {
      // Only what these keys wrote is taken back, never an older step.
      if (valueAt(job, run.current.path) === run.current.value) change({ kind: 'undo' })
      run.current = null
      return true
    }
    const step = event.ctrlKey || event.metaKey || event.altKey ? null : stepOf(event)
    if (step === null) return false
    const { xMm, yMm } = handle.place
    write(movedTo(hung, handle.thing, { xMm: xMm + step.xMm, yMm: yMm + step.yMm }), handle.thing)
    return true
  }
  return { write, settle, key }
}

export type Board = ReturnType<typeof useBoard>

type Wanted = { readonly to: PlaceMm; readonly placed: Placed; readonly reachMm: number }

/** Where a dragged thing comes to stand: on a guide near by, else on a whole millimetre. */
function snapTo({ wall, swap }: Hung, { thing }: Handle, { to, placed, reachMm }: Wanted) {
  const { emitter, looked } = placed
  const plainY = { mm: wholeMm(to.yMm), guide: null }
  if (thing === 'emitter') {
    return {
      x: snapped(to.xMm, emitterGuides(wall, swap.pipes, emitter), reachMm),
      y: snapped(to.yMm, bottomGuides(looked, emitter), reachMm),
    }
  }
  if (thing === 'old') {
    const widthMm = swap.existing?.widthMm ?? 0
    return { x: snapped(to.xMm, edgeGuides(wall, { widthMm }), reachMm), y: plainY }
  }
  const obstacle = (wall.obstacles ?? []).find(({ obstacleId }) => obstacleId === thing.obstacleId)
  const guides = obstacle === undefined ? [] : edgeGuides(wall, obstacle)
  return { x: snapped(to.xMm, guides, reachMm), y: snapped(to.yMm, floor, reachMm) }
}

const floor = [{ mm: 0, says: words.guides.onFloor, line: 0 }]
