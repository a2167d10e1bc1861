import { useDebouncedValue } from '@mantine/hooks'
import { useQueries } from '@tanstack/react-query'
import { useMemo } from 'react'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job, Room, Swap } from '../../../src-main/domain/job.ts'
import { call } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { formOnWall, shapeOf } from '../../../src-main/engine/wall/emitter-on-wall.ts'
import { rankEmitters } from './rank-emitters.ts'
import type { At, Ranked } from './rank-emitters.ts'

/** Where the emitter is to hang. */
export type Place = Pick<Swap, 'roomId' | 'wallId' | 'pipes'> & Partial<Pick<Swap, 'centre' | 'bottomMm'>>

/** A catalogue emitter beside what the room needs and the wall allows. */
export type Candidate = Ranked & { readonly fit: AnswerOf<'wall.fit'> | null }

const mostRanked = 1000
/** How many more than are shown are tried on the wall, so that those that fit can come first. */
const lookedAtAhead = 32

/** Emitters that match what was typed, each with what it would give; the first `most` also with whether they fit. */
export function useCandidates(
  job: Job,
  place: Place,
  { text, most }: { readonly text: string; readonly most: number },
) {
  const [sought] = useDebouncedValue(text, 250)
  const input = { text: sought, kind: 'emitter', most: mostRanked } as const
  const found = useAsk('catalogue.search', input, { keepOld: true, staleMs: Infinity })
  const room = job.rooms.find((one) => one.roomId === place.roomId)
  const need = useAsk('heat.load', heatInput(job, room), { enabled: room !== undefined })
  const needW = need.data?.watts ?? null
  const { flowC, returnC } = job.survey.system
  const roomC = room?.roomC
  const items = found.data?.items
  const ranked = useMemo(() => {
    const offered = (items ?? []).flatMap(({ item, fromPence }) =>
      item.kind === 'emitter' ? [{ emitter: item, fromPence }] : [],
    )
    return rankEmitters(offered, temperatures(flowC, returnC, roomC), needW)
  }, [items, flowC, returnC, roomC, needW])
  const near = ranked.slice(0, most + lookedAtAhead)
  const fits = useQueries({ queries: near.map(({ emitter }) => fitQuery(fitInput(room, place, emitter))) })
  const judged = near.map((one, at): Candidate => ({ ...one, fit: fits[at]?.data ?? null }))
  const known = fits.every((fit) => !fit.isFetching)
  const candidates = (known ? fittingFirst(judged, needW) : judged).slice(0, most)
  return { candidates, count: ranked.length, found, needW, rough: need.data?.rough ?? false }
}

/** Of those that are warm enough, the ones that fit the wall before the ones that do not; else as they stood. */
function fittingFirst(judged: readonly Candidate[], needW: number | null): readonly Candidate[] {
  const good = ({ fit, givesW }: Candidate) =>
    fit?.fits === true && (needW === null || (givesW ?? 0) >= needW)
  return [...judged.filter(good), ...judged.filter((one) => !good(one))]
}

/** The draft may hold what was mistyped: only numbers are worked with. */
function temperatures(flowC: unknown, returnC: unknown, roomC: unknown): At | null {
  const known = typeof flowC === 'number' && typeof returnC === 'number' && typeof roomC === 'number'
  return known ? { flowC, returnC, roomC } : null
}

function fitQuery(input: InputOf<'wall.fit'> | null) {
  return {
    queryKey: ['wall.fit', input] as const,
    queryFn: () => (input === null ? null : call('wall.fit', input)),
    enabled: input !== null,
    staleTime: Infinity,
  }
}

function heatInput(job: Job, room: Room | undefined): InputOf<'heat.load'> {
  const { name, roomC, heat } = room ?? { name: '', roomC: 0, heat: { volumeM3: 0, roughWPerM3: 0 } }
  return { room: { name, roomC, outsideC: job.survey.outsideC, ...heat } }
}

function fitInput(room: Room | undefined, place: Place, emitter: Emitter): InputOf<'wall.fit'> | null {
  const wall = room?.walls.find((one) => one.wallId === place.wallId)
  if (wall === undefined) return null
  const between = place.pipes.length === 2
  const usual = between ? ({ kind: 'betweenPipes' } as const) : ({ kind: 'middleOfWall' } as const)
  return {
    wall,
    emitter: shapeOf(emitter),
    valves: {},
    centre: place.centre ?? usual,
    bottomMm: place.bottomMm ?? 150,
    pipes: place.pipes,
    curved: formOnWall(emitter).curved,
  }
}
