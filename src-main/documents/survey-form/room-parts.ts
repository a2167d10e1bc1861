import type { Room } from '../../domain/job.ts'
import { box, lines, ticks, yesNo } from './form-fields.ts'
import type { FormPart } from './form-view.ts'
import { ageChoices, formChoices } from './form-words.ts'

/** What is asked of a room, in the order of the quick entry. */
export function roomParts(room: Room | null): readonly FormPart[] {
  const entry = room?.quick?.entry
  return [
    {
      title: 'The room itself',
      fields: [
        box('Name of the room', room?.name),
        box('Storey (0 is the ground floor)', room?.storey),
        box('Design temperature (°C)', room?.roomC),
        ticks('Used as', formChoices.use, room?.use),
        box('Length (m)', entry?.lengthM),
        box('Width (m)', entry?.widthM),
        box('Height (m)', entry?.heightM),
        ticks('Floor covering', formChoices.floor, room?.floor),
      ],
    },
    outsidePart(entry),
    {
      title: 'The house around it',
      fields: [
        ticks('Age of the house', ageChoices, entry?.ageBand),
        ticks('Above it', formChoices.above, entry?.above),
        ticks('Below it', formChoices.below, entry?.below),
        box('Room above is at (°C)', entry?.aboveC),
        box('Room below is at (°C)', entry?.belowC),
        box('Rooms beside are at (°C)', entry?.besideC),
        box('Loft insulation (mm)', entry?.loftInsulationMm),
        box('Other emitters give (W)', room?.otherEmittersW),
      ],
    },
    {
      title: 'To work in',
      fields: [
        yesNo('Holds the room thermostat, or the bypass', room?.holdsThermostat),
        yesNo('No room to stand close to the wall and work', room?.tightAccess),
        lines('Note', room?.note, 2),
      ],
    },
  ]
}

function outsidePart(entry: NonNullable<Room['quick']>['entry'] | undefined): FormPart {
  return {
    title: 'Outside walls and windows',
    fields: [
      ticks('Outside walls', formChoices.outsideWalls, entry?.outsideWallCount),
      ticks('Built as', formChoices.wallMade, entry === undefined ? undefined : wallOnForm(entry.wall)),
      ticks('Glazing', formChoices.glazing, entry === undefined ? undefined : glassOnForm(entry.glazing)),
      box('Their length together (m)', entry?.outsideWallM),
      box('Windows of usual size', entry?.windowCount),
      box('Or their area (m²)', entry?.glazedM2),
      box('Outside doors', entry?.outsideDoorCount),
    ],
  }
}

/** The form has fewer walls than the tables: what it has no square for leaves all of them empty. */
function wallOnForm(wall: string): string {
  return wall === 'sandstone' || wall === 'graniteOrWhin' ? 'stone' : wall
}

function glassOnForm(glazing: string): string {
  return glazing.startsWith('doubleOld') ? 'doubleOld' : glazing
}
