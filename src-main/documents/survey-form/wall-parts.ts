import type { Wall } from '../../domain/wall.ts'
import { box, ticks } from './form-fields.ts'
import type { FormPart } from './form-view.ts'
import { formChoices, obstacleWords } from './form-words.ts'

/** What stands on a wall: the words of its columns and its rows, empty ones to write in among them. */
export type WallFormView = {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

const columns = ['Name', 'Kind', 'From the left (mm)', 'Above the floor (mm)', 'Width (mm)', 'Height (mm)']
const leastRows = 6

/** What is asked of a wall, with room to sketch it. */
export function wallView(wall: Wall | null): {
  readonly parts: readonly FormPart[]
  readonly wall: WallFormView
} {
  const rows = (wall?.obstacles ?? []).map(({ name, kind, xMm, yMm, widthMm, heightMm }) => [
    name,
    obstacleWords[kind] ?? kind,
    ...[xMm, yMm, widthMm, heightMm].map(String),
  ])
  const empty = Array.from({ length: Math.max(1, leastRows - rows.length) }, () => columns.map(() => ''))
  return { parts: [wallPart(wall)], wall: { columns, rows: [...rows, ...empty] } }
}

function wallPart(wall: Wall | null): FormPart {
  return {
    title: 'The wall',
    fields: [
      box('Name of the wall', wall?.name),
      box('Width (mm)', wall?.widthMm),
      box('Height (mm)', wall?.heightMm),
      box('Skirting height (mm)', wall?.skirtingHeightMm),
      box('Board thickness (mm)', wall?.boardMm),
      box('Thickness from room to room (mm)', wall?.thicknessMm),
      box('First stud’s middle (mm)', wall?.studs?.firstMm),
      box('Stud spacing (mm)', wall?.studs?.spacingMm),
      box('Tiled up to (mm)', wall?.tiledToMm),
      ticks('Built of', formChoices.build, wall?.build),
      ticks('Finish', formChoices.finish, wall?.finish),
    ],
  }
}
