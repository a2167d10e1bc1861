import { useEffect, useRef, useState } from 'react'
import type { PointerEvent } from 'react'
import type { Guide } from './place/snapping.ts'
import type { PlaceMm, PointPx } from './place/geometry.ts'

export type Drag = {
  readonly start: PlaceMm
  readonly from: PlaceMm
}

type Dragged = {
  /** A screen point as a place on the wall. */
  readonly placeAt: (point: PointPx) => PlaceMm
  readonly move: (from: PlaceMm, by: PlaceMm, free: boolean) => void
  readonly done: () => void
  readonly takeBack: () => void
}

export type Lines = { readonly x: Guide | null; readonly y: Guide | null }

/** A drag with the pointer kept until it is let go; Escape takes it back. */
export function useDrag({ placeAt, move, done, takeBack }: Dragged) {
  const drag = useRef<Drag | null>(null)
  const [isDragging, setDragging] = useState(false)
  const end = (how: () => void) => {
    if (drag.current === null) return
    drag.current = null
    setDragging(false)
    how()
  }
  const escape = useRef(() => undefined as void)
  escape.current = () => end(takeBack)
  useEffect(() => {
    if (!isDragging) return undefined
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.stopPropagation()
      escape.current()
    }
    window.addEventListener('keydown', pressed, true)
    return () => window.removeEventListener('keydown', pressed, true)
  }, [isDragging])
  return {
    isDragging,
    start: (event: PointerEvent, from: PlaceMm) => {
      if (event.button !== 0) return
      event.preventDefault()
      event.currentTarget.setPointerCapture(event.pointerId)
      drag.current = { start: placeAt({ x: event.clientX, y: event.clientY }), from }
      setDragging(true)
    },
    handlers: {
      onPointerMove: (event: PointerEvent) => {
        if (drag.current === null) return
        const { start, from } = drag.current
        const at = placeAt({ x: event.clientX, y: event.clientY })
        move(from, { xMm: at.xMm - start.xMm, yMm: at.yMm - start.yMm }, event.altKey)
      },
      onPointerUp: () => end(done),
      onPointerCancel: () => end(takeBack),
    },
  }
}
