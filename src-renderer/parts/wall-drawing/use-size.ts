import { useEffect, useRef, useState } from 'react'
import type { SizePx } from './place/geometry.ts'

/** How large an element is drawn, kept up to date. */
export function useSize(start: SizePx) {
  const ref = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState(start)
  useEffect(() => {
    const element = ref.current
    if (element === null) return undefined
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined) return
      const { width, height } = entry.contentRect
      if (width > 0 && height > 0) setSize({ widthPx: width, heightPx: height })
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, size }
}
