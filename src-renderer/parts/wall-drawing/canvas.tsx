import { useDeferredValue, useRef } from 'react'
import type { KeyboardEvent, PointerEvent } from 'react'
import { wallFrame } from '../../../src-main/engine/wall/drawing.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { middleOf, mmPerPx, wallPlace } from './place/geometry.ts'
import type { PlaceMm, PointPx } from './place/geometry.ts'
import { GuideLines, GuideWords, HandleShape } from './handles.tsx'
import type { Handle } from './handles.tsx'
import { handlesOf } from './handles-of.ts'
import { sameThing, stepOf } from './place/moving.ts'
import { Picture } from './picture.tsx'
import type { Board } from './use-board.ts'
import { useCamera, useWheel } from './use-camera.ts'
import type { Camera } from './use-camera.ts'
import { useDrag } from './use-moves.ts'
import type { Placed } from './use-set-out-here.ts'
import type { useSize } from './use-size.ts'
import { viewOf } from './view-of.ts'
import { ViewTools } from './view-tools.tsx'
import type { Layers } from './view-tools.tsx'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'
import type { Rubber } from './use-rubber.ts'

type Canvas = {
  readonly board: Board
  readonly placed: Placed
  readonly sized: ReturnType<typeof useSize>
  readonly layers: Layers
  readonly setLayers: (layers: Layers) => void
  readonly rubber: Rubber
  readonly describedBy: string
  readonly detailsId: string
}

/** The drawing with all that can be taken hold of on it. */
export function Canvas(props: Canvas) {
  const { placed, sized, layers, describedBy, detailsId, rubber, board } = props
  const { size, ref } = sized
  const whole = viewOf(placed, { size, layers })
  const chosen = handlesOf(whole).find(({ thing }) => sameThing(board.chosen, thing))
  const fit = wallFrame(whole).wall
  const camera = useCamera(fit, middleOf(chosen?.box ?? fit))
  const view = viewOf(placed, { size, layers, zoom: camera.zoom })
  const shownView = useDeferredValue(view)
  const sheet = wallFrame(view)
  useWheel(ref, camera, { sheet, size })
  const perPx = mmPerPx(sheet.whole, size)
  const placeAt = ({ x, y }: PointPx): PlaceMm => {
    const corner = ref.current?.getBoundingClientRect()
    return wallPlace({ x: x - (corner?.left ?? 0), y: y - (corner?.top ?? 0) }, sheet.whole, size)
  }
  const ground = useGround({ camera, rubber, placeAt, perPx })
  const { x, y, width, height } = sheet.whole
  return (
    <div className={styles.canvas}>
      <ViewTools camera={camera} layers={layers} setLayers={props.setLayers} has={hasOf(view)} />
      <div
        ref={ref}
        className={styles.view}
        role="group"
        tabIndex={0}
        aria-label={words.canvas(placed.wall.name)}
        aria-describedby={describedBy}
        aria-details={detailsId}
        onKeyDown={(event) => lookAround(event, camera, perPx)}
      >
        <Picture view={shownView} />
        <svg className={styles.over} viewBox={`${x} ${y} ${width} ${height}`} data-mode={ground.mode}>
          <rect className={styles.ground} {...sheet.whole} {...ground.handlers} />
          {rubber.kind === null ? (
            <Handles
              board={board}
              placed={placed}
              frame={{ view, placeAt, perPx }}
              describedBy={describedBy}
            />
          ) : null}
          {rubber.box === null ? null : (
            <rect
              className={styles.rubber}
              x={rubber.box.xMm}
              y={-rubber.box.yMm - rubber.box.heightMm}
              width={rubber.box.widthMm}
              height={rubber.box.heightMm}
            />
          )}
          <GuideLines lines={board.lines} sheet={sheet} />
        </svg>
        <GuideWords lines={board.lines} />
      </div>
    </div>
  )
}

type Frame = {
  readonly view: WallView
  readonly placeAt: (point: PointPx) => PlaceMm
  readonly perPx: number
}

type AllHandles = Pick<Canvas, 'board' | 'placed' | 'describedBy'> & { readonly frame: Frame }

function Handles({ frame, ...rest }: AllHandles) {
  const sheet = wallFrame(frame.view)
  return handlesOf(frame.view).map((handle) => (
    <MovableHandle key={handle.key} handle={handle} sheet={sheet} frame={frame} {...rest} />
  ))
}

type Movable = AllHandles & { readonly handle: Handle; readonly sheet: ReturnType<typeof wallFrame> }

function MovableHandle({ handle, sheet, frame, board, placed, describedBy }: Movable) {
  const drag = useDrag({
    placeAt: frame.placeAt,
    move: (from, by, free) => {
      const to = { xMm: from.xMm + by.xMm, yMm: from.yMm + by.yMm }
      board.drag(handle, to, { placed, reachMm: free ? 0 : 8 * frame.perPx })
    },
    done: () => board.drop(handle.thing),
    takeBack: board.takeBack,
  })
  const clashes = placed.looked.some(
    (one) =>
      one.clashes &&
      (handle.thing === 'emitter' ||
        (typeof handle.thing === 'object' && one.obstacleId === handle.thing.obstacleId)),
  )
  return (
    <HandleShape
      handle={handle}
      sheet={sheet}
      leastMm={36 * frame.perPx}
      chosen={sameThing(board.chosen, handle.thing)}
      clashes={clashes}
      describedBy={describedBy}
      onFocus={() => board.choose(handle.thing)}
      onBlur={board.settle}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') event.preventDefault()
        if (!board.key(handle, event)) return
        event.preventDefault()
        event.stopPropagation()
      }}
      onPointerDown={(event) => {
        if (event.currentTarget instanceof SVGElement) event.currentTarget.focus({ preventScroll: true })
        drag.start(event, handle.place)
      }}
      handlers={drag.handlers}
    />
  )
}

type Ground = Pick<Frame, 'placeAt' | 'perPx'> & { readonly camera: Camera; readonly rubber: Rubber }

/** What the pointer does beside the things: goes along a wall drawn larger, or draws a rectangle. */
function useGround({ camera, rubber, placeAt, perPx }: Ground) {
  const from = useRef<PointPx | null>(null)
  const mode = rubber.kind !== null ? 'draw' : camera.zoom.times > 1 ? 'pan' : 'still'
  return {
    mode,
    handlers: {
      onPointerDown: (event: PointerEvent) => {
        if (event.button !== 0 || mode === 'still') return
        event.currentTarget.setPointerCapture(event.pointerId)
        from.current = { x: event.clientX, y: event.clientY }
        if (mode === 'draw') rubber.start(placeAt(from.current))
      },
      onPointerMove: (event: PointerEvent) => {
        const before = from.current
        if (before === null) return
        const at = { x: event.clientX, y: event.clientY }
        if (mode === 'draw') {
          rubber.stretch(placeAt(at))
          return
        }
        from.current = at
        camera.pan({ xMm: (before.x - at.x) * perPx, yMm: (at.y - before.y) * perPx })
      },
      onPointerUp: () => {
        from.current = null
        if (mode === 'draw') rubber.done()
      },
      onPointerCancel: () => {
        from.current = null
        rubber.cancel()
      },
    },
  }
}

/** Plus, minus and nought for the size; on the drawing itself the arrows go along it. */
function lookAround(event: KeyboardEvent, camera: Camera, perPx: number): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const step = event.target === event.currentTarget ? stepOf(event) : null
  if (event.key === '+' || event.key === '=') camera.step(1.25)
  else if (event.key === '-') camera.step(1 / 1.25)
  else if (event.key === '0') camera.fit()
  else if (step !== null && camera.zoom.times > 1) {
    const by = 60 * perPx
    camera.pan({ xMm: Math.sign(step.xMm) * by, yMm: Math.sign(step.yMm) * by })
  } else return
  event.preventDefault()
}

function hasOf({ wall }: WallView) {
  return {
    tiles: wall.finish === 'tile' && wall.tiles !== undefined,
    plan: (wall.obstacles ?? []).some(({ leaf }) => leaf?.opensIntoRoom === true),
  }
}
