import type { Job, Room } from '../../domain/job.ts'
import { houseParts } from './house-parts.ts'
import { roomParts } from './room-parts.ts'
import { swapParts } from './swap-parts.ts'
import { wallView } from './wall-parts.ts'
import type { WallFormView } from './wall-parts.ts'

/** One question: an empty box, or what a job says; or a row of choices to tick. */
export type FormField =
  | { readonly kind: 'box'; readonly label: string; readonly value: string; readonly wide?: boolean }
  | { readonly kind: 'lines'; readonly label: string; readonly value: string; readonly lines: number }
  | {
      readonly kind: 'ticks'
      readonly label: string
      readonly choices: readonly { readonly says: string; readonly ticked: boolean }[]
    }
export type FormPart = { readonly title: string; readonly fields: readonly FormField[] }

/** A page of questions; a wall's page has room to sketch and a list of what is on it. */
export type FormPage = {
  readonly title: string
  readonly parts: readonly FormPart[]
  readonly wall?: WallFormView
}
export type SurveyFormView = {
  readonly title: string
  readonly firmName: string
  readonly pages: readonly FormPage[]
}

/** The form to take to site: blank for so many rooms, or with what a job already says. */
export function surveyFormView(job: Job | null, blankRooms: number): SurveyFormView {
  const house: FormPage = { title: 'The house', parts: houseParts(job) }
  if (job === null) {
    const rooms = Array.from({ length: blankRooms }, (_, at) => blankRoom(at + 1)).flat()
    return { title: 'Survey form', firmName: '', pages: [house, ...rooms] }
  }
  const rooms = job.rooms.length === 0 ? blankRoom(1) : job.rooms.flatMap((room) => pagesOf(room, job))
  return { title: `Survey form: ${job.title}`, firmName: job.firm?.name ?? '', pages: [house, ...rooms] }
}

function blankRoom(nth: number): readonly FormPage[] {
  return [
    { title: `Room ${nth}`, parts: roomParts(null) },
    { title: `Room ${nth}: the wall`, ...wallView(null) },
    { title: `Room ${nth}: the swap`, parts: swapParts(null) },
  ]
}

function pagesOf(room: Room, job: Job): readonly FormPage[] {
  const swaps = job.swaps.filter(({ roomId }) => roomId === room.roomId)
  return [
    { title: room.name, parts: roomParts(room) },
    ...room.walls.map((wall) => ({ title: `${room.name}: ${wall.name}`, ...wallView(wall) })),
    ...(swaps.length === 0 ? [null] : swaps).map((swap) => ({
      title: `${room.name}: the swap`,
      parts: swapParts(swap),
    })),
  ]
}
