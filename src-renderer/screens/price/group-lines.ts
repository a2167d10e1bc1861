import type { Job } from '../../../src-main/domain/job.ts'
import type { QuoteLine } from '../../../src-main/domain/quote.ts'
import { words } from './price.words.ts'

export type LineGroup = {
  readonly key: string
  readonly title: string
  readonly lines: readonly QuoteLine[]
  readonly netPence: number
}

/** The lines by room, in the job's order, then those for several rooms, then what the whole job needs once. */
export function groupLines(
  job: Pick<Job, 'rooms' | 'swaps'>,
  lines: readonly QuoteLine[],
): readonly LineGroup[] {
  const roomOf = new Map(job.swaps.map(({ swapId, roomId }) => [swapId, roomId]))
  const keyOf = (line: QuoteLine) => {
    const rooms = new Set(line.swapIds.map((swapId) => roomOf.get(swapId)))
    if (line.shared || rooms.size === 0) return onceKey
    return rooms.size === 1 ? `room:${[...rooms][0]}` : severalKey
  }
  const places = [
    ...job.rooms.map(({ roomId, name }) => ({ key: `room:${roomId}`, title: name })),
    { key: severalKey, title: words.groups.several },
    { key: onceKey, title: words.groups.once },
  ]
  const byKey = Map.groupBy(lines, keyOf)
  return places
    .map((place) => {
      const here = byKey.get(place.key) ?? []
      return { ...place, lines: here, netPence: here.reduce((sum, line) => sum + line.netPence, 0) }
    })
    .filter((group) => group.lines.length > 0)
}

/** Whether two groups show the same: what was sold as before stays the same line. */
export function sameGroup(a: LineGroup, b: LineGroup): boolean {
  return (
    a.title === b.title &&
    a.netPence === b.netPence &&
    a.lines.length === b.lines.length &&
    a.lines.every((line, at) => line === b.lines[at])
  )
}

const severalKey = 'several'
const onceKey = 'once'
