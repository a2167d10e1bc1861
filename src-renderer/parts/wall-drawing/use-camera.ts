import { useEffect, useState } from 'react'
import type { RefObject } from 'react'
import type { Box, Sheet, Zoom } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { middleOf, mmPerPx, pannedBy, wallPlace, zoomedBy } from './place/geometry.ts'
import type { PlaceMm, SizePx } from './place/geometry.ts'

export type Camera = {
  readonly zoom: Zoom
  readonly zoomBy: (by: number, about?: PlaceMm) => void
  /** Larger or smaller; from the whole it goes to what is chosen. */
  readonly step: (by: number) => void
  readonly pan: (by: PlaceMm) => void
  readonly fit: () => void
}

/** What part of the wall is looked at. `fit` is the frame of the whole. */
export function useCamera(fit: Box, chosen: PlaceMm): Camera {
  const [taken, setTaken] = useState<Zoom | null>(null)
  const zoom = taken === null || taken.times === 1 ? { times: 1, ...middleOf(fit) } : taken
  return {
    zoom,
    zoomBy: (by, about = zoom) => setTaken(zoomedBy(zoom, by, { about, fit })),
    step: (by) => {
      const from = zoom.times === 1 && by > 1 ? { ...zoom, ...chosen } : zoom
      setTaken(zoomedBy(from, by, { about: from, fit }))
    },
    pan: (by) => setTaken(pannedBy(zoom, by, fit)),
    fit: () => setTaken(null),
  }
}

/** Ctrl and wheel zooms about the pointer; Shift and wheel goes along the wall. The bare wheel stays the page's. */
export function useWheel(
  ref: RefObject<HTMLElement | null>,
  camera: Camera,
  { sheet, size }: { readonly sheet: Sheet; readonly size: SizePx },
): void {
  useEffect(() => {
    const element = ref.current
    if (element === null) return undefined
    const turned = (event: WheelEvent) => {
      const isPan = event.shiftKey && camera.zoom.times > 1
      if (!event.ctrlKey && !isPan) return
      event.preventDefault()
      const by = event.deltaY === 0 ? event.deltaX : event.deltaY
      if (event.ctrlKey) {
        const { left, top } = element.getBoundingClientRect()
        const at = { x: event.clientX - left, y: event.clientY - top }
        camera.zoomBy(Math.exp(-by / 400), wallPlace(at, sheet.whole, size))
        return
      }
      camera.pan({ xMm: by * mmPerPx(sheet.whole, size), yMm: 0 })
    }
    element.addEventListener('wheel', turned, { passive: false })
    return () => element.removeEventListener('wheel', turned)
  })
}
