import type { Thread } from '../../domain/item.ts'

/** Major diameters of ISO 228 threads, mm: inches of the standard x 25.4 (threadchart.net's table of ISO 228). */
export const threadMajorMm: Readonly<Record<Thread, number>> = {
  'G1/8': 0.383 * 25.4,
  'G1/4': 0.518 * 25.4,
  'G3/8': 0.656 * 25.4,
  'G1/2': 0.825 * 25.4,
  'G3/4': 1.041 * 25.4,
}
