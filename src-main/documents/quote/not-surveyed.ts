import type { QuoteMaterial } from '../customer-quote-view.ts'
import { capital, listed } from '../in-words.ts'
import { roomName, wallName } from '../things-in-words.ts'
import type { Job, Room, Swap } from '../../domain/job.ts'
import type { Pipe, Wall } from '../../domain/wall.ts'

type Surveyed = Pick<QuoteMaterial, 'job' | 'setOuts'>

/** A swap with the room and the wall that it stands in. */
type Placed = { readonly swap: Swap; readonly room: Room; readonly wall: Wall }

/** What was not surveyed, and what the price takes for granted in its place: each said only where it is so. */
export function notSurveyed({ job, setOuts }: Surveyed): readonly string[] {
  const placed = placedIn(job)
  return [
    ...aboutHouse(job),
    ...aboutOldEmitters(placed),
    ...aboutWalls(placed, setOuts),
    ...aboutPipes(placed),
    ...aboutHeat(job),
  ]
}

function placedIn({ rooms, swaps }: Job): readonly Placed[] {
  return swaps.flatMap((swap) => {
    const room = rooms.find((one) => one.roomId === swap.roomId)
    const wall = room?.walls.find((one) => one.wallId === swap.wallId)
    return room === undefined || wall === undefined ? [] : [{ swap, room, wall }]
  })
}

function aboutHouse({ survey, house, swaps }: Job): readonly string[] {
  const { builtYear, system } = survey
  const partOff = system.drain === 'isolatedPart' && system.drainedShare === undefined
  return [
    ...(builtYear === undefined
      ? ['The year of building is not known; the house is treated as old enough to hold asbestos.']
      : []),
    ...(partOff
      ? ['The water in the part that is isolated was not measured; the usual share is taken.']
      : []),
    ...(house === undefined && swaps.length > 0
      ? [
          'The pipes between the boiler and the rooms were not surveyed; they are taken to carry what the new emitters need.',
        ]
      : []),
  ]
}

function aboutOldEmitters(placed: readonly Placed[]): readonly string[] {
  const unseen = placed.filter(({ swap: { existing } }) => {
    if (existing === undefined) return false
    return existing.oldHoles === undefined && existing.brackets === undefined
  })
  return sayOf(
    roomsOf(unseen),
    (rooms) =>
      `The wall behind the old emitter in ${rooms} was not seen; making it good is not in this price until it has been.`,
  )
}

function aboutWalls(placed: readonly Placed[], setOuts: Surveyed['setOuts']): readonly string[] {
  const unmarked = placed.filter(
    ({ wall }) => !(wall.obstacles ?? []).some(({ kind }) => kind === 'cable' || kind === 'pipeInWall'),
  )
  const noStuds = placed.filter(
    ({ wall, swap }) =>
      wall.build === 'boardOnStuds' &&
      wall.studs === undefined &&
      setOuts[swap.swapId]?.fixing.needsBoard === true,
  )
  const noJoints = placed.filter(({ wall }) => wall.finish === 'tile' && wall.tiles === undefined)
  return [
    ...sayOf(
      wallsOf(unmarked),
      (walls) =>
        `The survey marks no pipe or cable hidden in ${walls}. If one is met, the holes move, or a new price is agreed first.`,
    ),
    ...sayOf(
      wallsOf(noStuds),
      (walls) => `The studs in ${walls} were not found; the usual spacing is taken.`,
    ),
    ...sayOf(
      wallsOf(noJoints),
      (walls) => `Where the tiles meet on ${walls} was not measured; a hole may come near an edge.`,
    ),
  ]
}

function aboutPipes(placed: readonly Placed[]): readonly string[] {
  const some = (is: (pipe: Pipe) => boolean) => roomsOf(placed.filter(({ swap }) => swap.pipes.some(is)))
  return [
    ...sayOf(
      roomsOf(
        placed.filter(
          ({ swap: { pipes } }) => pipes.length > 0 && pipes.every((pipe) => pipe.carries === 'unknown'),
        ),
      ),
      (rooms) =>
        `Which pipe is flow and which is return in ${rooms} was not found; it is tried before the valves go on.`,
    ),
    ...sayOf(
      some((pipe) => pipe.from === 'floor' && pipe.offWallMm === undefined),
      (rooms) =>
        `How far the pipes in ${rooms} stand off the wall was not measured; they are taken to meet their valves.`,
    ),
    ...sayOf(
      some((pipe) => pipe.from === 'wall' && pipe.yMm === undefined),
      (rooms) =>
        `How high the pipes in ${rooms} leave the wall was not measured; they are taken to meet their valves.`,
    ),
  ]
}

function aboutHeat({ rooms, swaps }: Job): readonly string[] {
  const quick = rooms.filter(
    (room) =>
      room.quick !== undefined &&
      room.quick.byHand !== true &&
      swaps.some((swap) => swap.roomId === room.roomId),
  )
  return sayOf(
    quick.map(roomName),
    (names) =>
      `The heat that ${names} needs is worked out from its size and the age of the house; walls and floors were not opened.`,
  )
}

function roomsOf(placed: readonly Placed[]): readonly string[] {
  return placed.map(({ room }) => roomName(room))
}

/** Walls by name; where they are many, the rooms that they are in. */
function wallsOf(placed: readonly Placed[]): readonly string[] {
  const named = [...new Set(placed.map(({ wall, room }) => `${wallName(wall)} of ${roomName(room)}`))]
  if (named.length <= 4) return named
  return [`the walls worked on in ${listed([...new Set(roomsOf(placed))])}`]
}

/** One sentence for all the places it is true of, each named once; none where there is no such place. */
function sayOf(places: readonly string[], says: (named: string) => string): readonly string[] {
  const once = [...new Set(places)]
  return once.length === 0 ? [] : [capital(says(listed(once)))]
}
