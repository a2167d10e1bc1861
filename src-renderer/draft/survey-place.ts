import type { Derivation } from '../../src-main/domain/derivation.ts'
import type { Job } from '../../src-main/domain/job.ts'
import { valueAt } from './path.ts'

type Says = (says: string) => string | null

const exactly =
  (sentences: Readonly<Record<string, string>>): Says =>
  (says) =>
    sentences[says] ?? null

/** Sentences of the whole job, by the field that they quote. */
const ofJob = exactly({
  'Distance one way': 'site.travelKm',
  'Boiler output': 'survey.system.boilerKW',
  'Water in the system, as surveyed': 'survey.system.contentLitres',
  'Share let out': 'survey.system.drain',
  'Water let out, as a share of the system': 'survey.system.drain',
  'How the water is dealt with': 'survey.system.drain',
  'The system is sealed': 'survey.system.kind',
  'Flow temperature': 'survey.system.flowC',
  Flow: 'survey.system.flowC',
  Return: 'survey.system.returnC',
  Outside: 'survey.outsideC',
  'Year built': 'survey.builtYear',
  'The year of building is not known': 'survey.builtYear',
  'Soldering is planned': 'survey.hotWork',
  'Children or frail people live here': 'survey.frailOrChildren',
})

/** Sentences of one swap, below `swaps[n]`. */
const ofSwap = exactly({
  'Old holes': 'existing.oldHoles.count',
  Diameter: 'existing.oldHoles.diameterMm',
  Depth: 'existing.oldHoles.depthMm',
  'Old brackets': 'existing.brackets',
  'Mass of the old emitter': 'existing.dryKg',
  'Bottom edge above the floor': 'bottomMm',
  Element: 'elementW',
})

const pipeFields: readonly (readonly [RegExp, string])[] = [
  [/^The (left|right) pipe, from the left end of the wall$/, 'xMm'],
  [/^End of the (left|right) pipe, from the floor$/, 'yMm'],
  [/^The (left|right) pipe, off the wall$/, 'offWallMm'],
  [/^Pipe on the (left|right)(?::.*)?$/, 'outsideMm'],
]

/** Sentences of one room, below `rooms[n]`. */
const ofRoom = exactly({
  'The room': 'use',
  Room: 'roomC',
  Volume: 'heat.volumeM3',
  'Floor area': 'heat.floorAreaM2',
  'Air changes': 'heat.airChangesPerHour',
  'Emitters that stay': 'otherEmittersW',
  'Storeys up or down': 'storey',
})

/** Sentences of one wall, below `rooms[n].walls[m]`. */
const ofWall = exactly({
  'Width of the wall': 'widthMm',
  'Height of the wall': 'heightMm',
  'Height of the skirting': 'skirtingHeightMm',
  'The wall is tiled': 'finish',
  'Stud spacing': 'studs.spacingMm',
})

const obstacleFields: Readonly<Record<string, string>> = {
  'from the left end of the wall': 'xMm',
  'from the floor': 'yMm',
  width: 'widthMm',
  height: 'heightMm',
}
const ofObstacle = /^(.+), (from the left end of the wall|from the floor|width|height)$/

/**
 * Where in the job a number of a reason was given: the field that its sentence quotes and that holds its value. Null for what no
 * field of the survey holds, such as a figure of the firm or of the catalogue.
 */
export function surveyPlace(leaf: Derivation, job: Job, swapIds: readonly string[] = []): string | null {
  if (leaf.from.length > 0) return null
  const whole = ofJob(leaf.says)
  if (whole !== null) return whole
  const places = job.swaps.flatMap((swap, at) =>
    swapIds.length > 0 && !swapIds.includes(swap.swapId) ? [] : placesOfSwap(leaf.says, job, at),
  )
  return places.find((place) => holds(job, place, leaf)) ?? null
}

/** The storey is told as how far up or down it is. */
function holds(job: Job, place: string, { says, value }: Derivation): boolean {
  const there = valueAt(job, place)
  if (says === 'The room' || value === 'not known') return true
  return there === value || (typeof there === 'number' && Math.abs(there) === value)
}

function placesOfSwap(says: string, job: Job, at: number): readonly string[] {
  const swap = job.swaps[at]
  const roomAt = job.rooms.findIndex(({ roomId }) => roomId === swap?.roomId)
  const wallAt = job.rooms[roomAt]?.walls.findIndex(({ wallId }) => wallId === swap?.wallId) ?? -1
  const wall = `rooms[${roomAt}].walls[${wallAt}]`
  const inSwap = ofSwap(says)
  const inRoom = ofRoom(says)
  const onWall = ofWall(says)
  return [
    ...(inSwap === null ? [] : [`swaps[${at}].${inSwap}`]),
    ...pipePlaces(says, job, at),
    ...(inRoom === null ? [] : [`rooms[${roomAt}].${inRoom}`]),
    ...(onWall === null ? [] : [`${wall}.${onWall}`]),
    ...obstaclePlaces(says, job.rooms[roomAt]?.walls[wallAt], wall),
  ]
}

function pipePlaces(says: string, job: Job, at: number): readonly string[] {
  const pipes = job.swaps[at]?.pipes ?? []
  return pipeFields.flatMap(([pattern, field]) => {
    const side = pattern.exec(says)?.[1]
    const pipeAt = pipes.findIndex((pipe) => pipe.side === side)
    return pipeAt < 0 ? [] : [`swaps[${at}].pipes[${pipeAt}].${field}`]
  })
}

type Wall = Job['rooms'][number]['walls'][number]

function obstaclePlaces(says: string, wall: Wall | undefined, path: string): readonly string[] {
  const found = ofObstacle.exec(says)
  const field = obstacleFields[found?.[2] ?? '']
  const at = wall?.obstacles?.findIndex(({ name }) => name === found?.[1]) ?? -1
  return field === undefined || at < 0 ? [] : [`${path}.obstacles[${at}].${field}`]
}
