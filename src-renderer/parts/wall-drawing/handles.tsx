import type { KeyboardEvent, PointerEvent } from 'react'
import { shared } from '../../../src-main/engine/wall/drawing/boxes.ts'
import type { Box, Sheet } from '../../../src-main/engine/wall/drawing/sheet.ts'
import type { PlaceMm } from './place/geometry.ts'
import type { Thing } from './place/moving.ts'
import type { Lines } from './use-moves.ts'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

/** A thing that can be taken hold of: its rectangle in the picture, and the place that moves. */
export type Handle = {
  readonly key: string
  readonly thing: Thing
  readonly name: string
  readonly box: Box
  readonly place: PlaceMm
}

type Hold = {
  readonly handle: Handle
  readonly sheet: Sheet
  readonly leastMm: number
  readonly chosen: boolean
  readonly clashes: boolean
  readonly describedBy: string
  readonly onFocus: () => void
  readonly onBlur: () => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  readonly onPointerDown: (event: PointerEvent) => void
  readonly handlers: object
}

/** One thing on the wall as a button that the arrow keys and the mouse move. */
export function HandleShape(props: Hold) {
  const { handle, sheet, leastMm, chosen, clashes, describedBy } = props
  const seen = shared(handle.box, sheet.wall)
  if (seen === null) return null
  const hit = atLeast(seen, leastMm)
  return (
    <g
      role="button"
      tabIndex={0}
      className={styles.handle}
      aria-label={handle.name}
      aria-describedby={describedBy}
      aria-pressed={chosen}
      data-clashes={clashes}
      data-thing={handle.key}
      onFocus={props.onFocus}
      onBlur={props.onBlur}
      onKeyDown={props.onKeyDown}
      onPointerDown={props.onPointerDown}
      {...props.handlers}
    >
      <rect {...hit} className={styles.hit} />
      <rect {...seen} className={styles.outline} />
    </g>
  )
}

/** Large enough to hit. */
function atLeast({ x, y, width, height }: Box, leastMm: number): Box {
  const across = Math.max(0, leastMm - width) / 2
  const up = Math.max(0, leastMm - height) / 2
  return { x: x - across, y: y - up, width: width + 2 * across, height: height + 2 * up }
}

/** The lines that a moving thing has snapped to. */
export function GuideLines({ lines, sheet }: { readonly lines: Lines; readonly sheet: Sheet }) {
  const { x, y, width, height } = sheet.wall
  return (
    <g aria-hidden className={styles.guides}>
      {lines.x === null ? null : <line x1={lines.x.line} x2={lines.x.line} y1={y} y2={y + height} />}
      {lines.y === null ? null : <line x1={x} x2={x + width} y1={-lines.y.line} y2={-lines.y.line} />}
    </g>
  )
}

/** What those lines are, in words. */
export function GuideWords({ lines }: { readonly lines: Lines }) {
  const says = [lines.x, lines.y].flatMap((guide) => (guide === null ? [] : [guide.says]))
  return says.length === 0 ? null : <p className={styles.snapped}>{words.guides.onLine(says.join('; '))}</p>
}
