import { memo } from 'react'
import { wallDrawing } from '../../../src-main/engine/wall/drawing.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { mm } from './in-words.ts'
import styles from './wall-drawing.module.css'

/** The engine's drawing, whose every text is escaped there. */
export const Picture = memo(function Picture({ view }: { readonly view: WallView }) {
  return (
    <div
      role="img"
      aria-label={pictureInWords(view)}
      className={styles.picture}
      dangerouslySetInnerHTML={{ __html: wallDrawing(view) }}
    />
  )
})

export function pictureInWords({ wall, emitter, setOut }: WallView): string {
  return (
    `${wall.name}, ${wall.widthMm} by ${wall.heightMm} mm, with ${emitter.name}: ` +
    `centre line ${mm(setOut.centreMm)} from the left, bottom edge ${mm(setOut.bottomMm)} above the floor, ` +
    `${setOut.holes.length} holes to drill.`
  )
}
