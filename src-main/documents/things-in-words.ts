import { capital, inSentence, listed, mm, tight } from './in-words.ts'
import type { Emitter } from '../domain/item.ts'
import { assertNever } from '../domain/outcome.ts'
import type { Room, Swap } from '../domain/job.ts'
import type { PipeOffset, SetOut } from '../domain/set-out.ts'
import type { Wall } from '../domain/wall.ts'

type Form = Emitter['form']

const panels: Readonly<Record<Extract<Form, { kind: 'panel' }>['panel'], string>> = {
  single: 'single panel radiator without fins',
  singleFinned: 'single panel radiator with fins',
  double: 'double panel radiator without fins',
  doubleFinned: 'double panel radiator with one row of fins',
  doubleTwoFins: 'double panel radiator with two rows of fins',
  tripleThreeFins: 'triple panel radiator with three rows of fins',
}

/** What an emitter is: `curved chrome towel rail`. */
export function emitterKind({ form, finish }: Pick<Emitter, 'form' | 'finish'>): string {
  const colour = finish === 'white' ? '' : `${finish} `
  switch (form.kind) {
    case 'panel':
      return `${colour}${panels[form.panel]}`
    case 'column':
      return `${form.columns}-column ${colour}radiator of ${form.sections} sections`
    case 'towelRail':
      return `${form.curve} ${finish} towel rail`
    default:
      return assertNever(form)
  }
}

/** `a curved chrome towel rail`, `an 8-column radiator of 12 sections`. */
export function withArticle(thing: string): string {
  return `${/^[8aeiou]/.test(thing) ? 'an' : 'a'} ${thing}`
}

/** `the window wall`, or the wall by its own name where that is no kind of wall. */
export function wallName({ name }: Pick<Wall, 'name'>): string {
  return /\bwall$/i.test(name) ? `the ${inSentence(name)}` : `the wall named “${name}”`
}

const builds: Readonly<Record<Wall['build'], string>> = {
  solidMasonry: 'solid masonry',
  hollowBlock: 'hollow block',
  aeratedBlock: 'aerated block',
  boardOnStuds: 'board on studs',
  boardOnDabs: 'board on dabs',
}
const finishes: Readonly<Record<Wall['finish'], string>> = {
  paint: 'painted',
  paper: 'papered',
  tile: 'tiled',
  bare: 'bare',
}

/** `tiled solid masonry`. */
export function wallBuild({ build, finish }: Pick<Wall, 'build' | 'finish'>): string {
  return `${finishes[finish]} ${builds[build]}`
}

export function roomName({ name }: Pick<Room, 'name'>): string {
  return `the ${inSentence(name)}`
}

/** Where the centre line is, from what a fitter can measure. */
export function centreInWords(
  swap: Pick<Swap, 'centre' | 'pipes'>,
  { centreMm }: Pick<SetOut, 'centreMm'>,
): string {
  const { centre, pipes } = swap
  switch (centre.kind) {
    case 'betweenPipes':
      return 'midway between the two pipes'
    case 'middleOfWall':
      return 'in the middle of the wall'
    case 'at':
      return `${mm(centreMm)} from the left end of the wall`
    case 'fromPipe': {
      const pipe = pipes.find((one) => one.side === centre.side)
      if (pipe === undefined) return `${mm(centreMm)} from the left end of the wall`
      return `${mm(Math.abs(centreMm - pipe.xMm))} from the ${centre.side} pipe`
    }
    default:
      return assertNever(centre)
  }
}

type PipeWork = Pick<
  PipeOffset,
  'side' | 'offsetMm' | 'riseMm' | 'outMm' | 'remedy' | 'elbows' | 'couplers' | 'pipeMm' | 'clips' | 'tailMm'
>

/** What the fitter does to one pipe, as the set-out sheet says it. */
export function pipeWork(pipe: PipeWork): string {
  switch (pipe.remedy) {
    case 'none':
      return 'Meets its valve as it is.'
    case 'longerTail':
      return `Extend the tail by ${mm(pipe.tailMm)}.`
    case 'pull':
      return `Ease the pipe to its valve. ${valveFromPipe(pipe)}`
    case 'repipe':
      return `Cut and re-pipe. ${valveFromPipe(pipe)} Takes ${partsOfPipe(pipe)}.`
    default:
      return assertNever(pipe.remedy)
  }
}

function valveFromPipe({ offsetMm, riseMm, outMm }: PipeWork): string {
  const across = `${mm(Math.abs(offsetMm))} to the ${offsetMm > 0 ? 'right' : 'left'} of the pipe`
  const up = `${mm(Math.abs(riseMm))} ${riseMm > 0 ? 'above' : 'below'} its end`
  const out = `${mm(Math.abs(outMm))} ${outMm > 0 ? 'further from' : 'nearer to'} the wall than the pipe`
  const moves = [
    ...(Math.round(offsetMm) === 0 ? [] : [across]),
    ...(Math.round(riseMm) === 0 ? [] : [up]),
    ...(Math.round(outMm) === 0 ? [] : [out]),
  ]
  return moves.length === 0 ? 'The valve is in line with the pipe.' : `The valve is ${listed(moves)}.`
}

function partsOfPipe({ pipeMm, elbows, couplers, clips }: PipeWork): string {
  const counted = (count: number, name: string) =>
    count === 0 ? [] : [`${count}${tight}${name}${count === 1 ? '' : 's'}`]
  const pipe = pipeMm === 0 ? [] : [`${mm(pipeMm)} of pipe`]
  return listed([
    ...pipe,
    ...counted(elbows, 'elbow'),
    ...counted(couplers, 'coupler'),
    ...counted(clips, 'clip'),
  ])
}

/** `Left pipe`. */
export function pipeLabel(side: PipeOffset['side']): string {
  return `${capital(side)} pipe`
}
