import { useMemo } from 'react'
import { wallDrawing, wallFrame } from '../../../src-main/engine/wall/drawing.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { pictureInWords } from './picture.tsx'
import { pxPerPaperMm } from './place/geometry.ts'
import type { SizePx } from './place/geometry.ts'
import styles from './wall-drawing.module.css'

/** Round the wall, in millimetres of paper. */
const edge = 1.2

/** The engine's drawing with the wall alone in sight: its dimensions, which want a larger screen, lie outside the frame. */
export function SmallPicture({ view, size }: { readonly view: WallView; readonly size: SizePx }) {
  const svg = useMemo(() => smallDrawing(view, size), [view, size])
  return (
    <div
      role="img"
      aria-label={pictureInWords(view)}
      className={styles.picture}
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  )
}

/** Drawn on paper so large that the wall alone fills the screen, and framed by the wall. */
export function smallDrawing(view: WallView, { widthPx, heightPx }: SizePx): string {
  const trial = wallFrame(view)
  const across = (trial.whole.width - trial.wall.width) / trial.unit
  const up = (trial.whole.height - trial.wall.height) / trial.unit
  const paper = {
    widthMm: across + Math.max(20, widthPx / pxPerPaperMm - 2 * edge),
    heightMm: up + Math.max(20, heightPx / pxPerPaperMm - 2 * edge),
  }
  const large = { ...view, paper }
  const { wall, unit } = wallFrame(large)
  const by = edge * unit
  const [x, y, width, height] = [wall.x - by, wall.y - by, wall.width + 2 * by, wall.height + 2 * by].map(
    Math.round,
  )
  const box = `viewBox="${x} ${y} ${width} ${height}"`
  const drawn = wallDrawing(large).replace(
    /viewBox="[^"]*"/,
    `${box} x="${x}" y="${y}" width="${width}" height="${height}"`,
  )
  // An svg inside another shows nothing beyond its frame, whatever the shape of the screen.
  return `<svg xmlns="http://www.w3.org/2000/svg" ${box}>${drawn}</svg>`
}
