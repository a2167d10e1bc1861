import { useEffect, useRef, useState } from 'react'
import type { ObstacleKind } from '../../../src-main/domain/wall.ts'
import { rectangleBetween } from './place/geometry.ts'
import type { PlaceMm } from './place/geometry.ts'

export type Rectangle = ReturnType<typeof rectangleBetween>

/** Smaller than this it was a slip of the hand. */
const leastMm = 10

/** A rectangle being drawn on the wall. */
export type Rubber = {
  /** What it is to be; null when nothing is being drawn. */
  readonly kind: ObstacleKind | null
  readonly box: Rectangle | null
  readonly begin: (kind: ObstacleKind) => void
  readonly start: (at: PlaceMm) => void
  readonly stretch: (to: PlaceMm) => void
  readonly done: () => void
  readonly cancel: () => void
}

/** Draws one rectangle from corner to corner; Escape gives up. */
export function useRubber(drawn: (kind: ObstacleKind, box: Rectangle) => void): Rubber {
  const [kind, setKind] = useState<ObstacleKind | null>(null)
  const [box, setBox] = useState<Rectangle | null>(null)
  const corner = useRef<PlaceMm | null>(null)
  const cancel = () => {
    corner.current = null
    setBox(null)
    setKind(null)
  }
  useEffect(() => {
    if (kind === null) return undefined
    const pressed = (event: KeyboardEvent) => {
      if (event.key === 'Escape') cancel()
    }
    window.addEventListener('keydown', pressed)
    return () => window.removeEventListener('keydown', pressed)
  }, [kind])
  return {
    kind,
    box,
    begin: setKind,
    start: (at) => {
      corner.current = at
      setBox(rectangleBetween(at, at))
    },
    stretch: (to) => {
      if (corner.current !== null) setBox(rectangleBetween(corner.current, to))
    },
    done: () => {
      corner.current = null
      setBox(null)
      if (kind === null || box === null || box.widthMm < leastMm || box.heightMm < leastMm) return
      setKind(null)
      drawn(kind, box)
    },
    cancel,
  }
}
