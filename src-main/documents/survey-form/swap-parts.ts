import type { Swap } from '../../domain/job.ts'
import { oldHoleCount } from '../../domain/wall.ts'
import type { CentreChoice, Pipe } from '../../domain/wall.ts'
import { box, lines, ticks, wideBox, yesNo } from './form-fields.ts'
import type { FormPart } from './form-view.ts'
import { formChoices } from './form-words.ts'

/** What is asked of a swap: the old emitter, the pipes, and where the new one goes. */
export function swapParts(swap: Swap | null): readonly FormPart[] {
  const pipeOn = (side: Pipe['side']) => swap?.pipes.find((pipe) => pipe.side === side)
  return [
    oldPart(swap?.existing),
    pipePart('The left pipe', pipeOn('left')),
    pipePart('The right pipe', pipeOn('right')),
    {
      title: 'The new emitter',
      fields: [
        wideBox('What the customer wants', undefined),
        ticks('Where its middle goes', formChoices.centre, centreOf(swap?.centre)),
        box('Bottom edge above the floor (mm)', swap?.bottomMm),
        box('Electric element (W)', swap?.elementW),
        ticks('Valves', formChoices.valves, swap?.valves.kind),
        ticks('Finish of the valves', formChoices.valveFinish, swap?.valves.finish),
        lines('Note', swap?.note, 1),
      ],
    },
  ]
}

function oldPart(existing: Swap['existing']): FormPart {
  return {
    title: 'What hangs there now',
    fields: [
      wideBox('What it is', existing?.name),
      box('Width of the old one (mm)', existing?.widthMm),
      box('Height of the old one (mm)', existing?.heightMm),
      box('Rated output (W)', existing?.ratedW),
      box('Mass (kg)', existing?.dryKg),
      box('Water (litres)', existing?.waterLitres),
      box('Brackets that leave marks', existing?.brackets),
      box('Old holes', existing?.oldHoles === undefined ? undefined : oldHoleCount(existing)),
      box('Diameter of the holes (mm)', existing?.oldHoles?.diameterMm),
      box('Depth of the holes (mm)', existing?.oldHoles?.depthMm),
    ],
  }
}

function pipePart(title: string, pipe: Pipe | undefined): FormPart {
  return {
    title,
    fields: [
      box('From the left (mm)', pipe?.xMm),
      box('Its end above the floor (mm)', pipe?.yMm),
      box('Its middle off the wall (mm)', pipe?.offWallMm),
      box('Through a cold void (mm)', pipe?.coldVoidMm),
      ticks('Comes out of', formChoices.pipeFrom, pipe?.from),
      ticks('Material', formChoices.material, pipe?.material),
      ticks('Size', formChoices.pipeSize, pipe?.outsideMm),
      ticks('Carries', formChoices.carries, pipe?.carries),
      yesNo('It cannot be moved (in a screed, behind tiles that stay)', pipe?.fixed),
    ],
  }
}

function centreOf(centre: CentreChoice | undefined): string | undefined {
  if (centre === undefined) return undefined
  return centre.kind === 'fromPipe' ? `fromPipe:${centre.side}` : centre.kind
}
