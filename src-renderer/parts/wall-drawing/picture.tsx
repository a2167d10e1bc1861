import { memo } from 'react'
import { wallDrawing } from '../../../src-main/engine/wall/drawing.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { mm } from './in-words.ts'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

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
    words.picture.what(wall.name, { widthMm: wall.widthMm, heightMm: wall.heightMm, emitter: emitter.name }) +
    words.picture.where(mm(setOut.centreMm), mm(setOut.bottomMm)) +
    words.picture.holes(setOut.holes.length)
  )
}
