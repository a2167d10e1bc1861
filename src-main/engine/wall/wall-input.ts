import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { EmitterShape } from '../../domain/item.ts'
import type { CentreChoice, Pipe, Wall } from '../../domain/wall.ts'

/** The room that valves take: beside the emitter, and below it down to the pipe. Absent: the firm's figures. */
export type ValveSpace = { readonly sideMm?: number | undefined; readonly dropMm?: number | undefined }

/** An emitter put on a wall. */
export type PlaceInput = {
  readonly wall: Wall
  readonly emitter: EmitterShape
  readonly valves: ValveSpace
  readonly centre: CentreChoice
  readonly bottomMm: number
  readonly pipes?: readonly Pipe[] | undefined
  /** A curved rail stands out a little more; absent: the emitter's own sizes say all. */
  readonly curved?: boolean | undefined
}

/** No size, mass or load of this trade comes near it, and sums of such numbers stay finite. */
const mostOfAnything = 1e9

/**
 * Passes an input on when every number in it is finite and below 10^9 in size, and names the first one that is not.
 * @param input any plain data
 * @source arithmetic
 * @example finiteInput({ bottomMm: 100 / 0 }).problems[0].path // => "bottomMm"
 */
export function finiteInput<T extends object>(input: T): Outcome<T> {
  const path = notFinite(input, '')
  if (path === null) return { ok: true, value: input }
  return refuse(
    'invalid',
    `${path} is not a number that can be worked with; give one that could be measured.`,
    path,
  )
}

function notFinite(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Math.abs(value) <= mostOfAnything ? null : path
  if (typeof value !== 'object' || value === null) return null
  const step = (key: string) =>
    Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`
  for (const [key, inner] of Object.entries(value)) {
    const found = notFinite(inner, step(key))
    if (found !== null) return found
  }
  return null
}
