import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, assertNever, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { CentreChoice, Pipe, Side } from '../../domain/wall.ts'

export type CentreLine = { readonly centreMm: number; readonly why: Derivation }
export type CentreInput = {
  readonly centre: CentreChoice
  readonly pipes: readonly Pipe[]
  readonly pipeCentresMm: number
  readonly wallWidthMm: number
}

/**
 * Where the emitter's centre line goes. Between the pipes: (xL + xR)/2. From one pipe: x ± c/2 with c the emitter's pipe
 * centres, to the right of a left pipe and to the left of a right one. Middle of the wall: W/2. Or where it was put.
 * Refuses `betweenPipes` without a pipe on each side, and `fromPipe` without a pipe on that side.
 *
 * @param input choice, pipes as found (mm from the wall's left end), pipe centres c and wall width W, mm, above 0
 * @source practice, no published source
 * @example centreLine({ centre: { kind: 'middleOfWall' }, pipes: [], pipeCentresMm: 550, wallWidthMm: 1800 }).value.centreMm // => 900
 */
export function centreLine(input: CentreInput): Outcome<CentreLine> {
  const { centre } = input
  switch (centre.kind) {
    case 'betweenPipes':
      return betweenPipes(input)
    case 'fromPipe':
      return fromPipe(input, centre.side)
    case 'middleOfWall': {
      const width = given('Width of the wall', input.wallWidthMm, 'mm', 'survey')
      return line('The centre line is the middle of the wall.', input.wallWidthMm / 2, [width])
    }
    case 'at': {
      const place = given(
        'Where the centre line was put, from the left end of the wall',
        centre.xMm,
        'mm',
        'survey',
      )
      return line('The centre line is where it was put.', centre.xMm, [place])
    }
    default:
      return assertNever(centre)
  }
}

/**
 * The pipe for one side of the emitter: the first one surveyed there.
 * @param pipes as found
 * @param side left or right, looking at the wall
 * @source practice, no published source
 * @example pipeOn([], 'left') // => undefined
 */
export function pipeOn(pipes: readonly Pipe[], side: Side): Pipe | undefined {
  return pipes.find((pipe) => pipe.side === side)
}

function betweenPipes({ pipes }: CentreInput): Outcome<CentreLine> {
  const left = pipeOn(pipes, 'left')
  const right = pipeOn(pipes, 'right')
  if (left === undefined || right === undefined) {
    return refuse(
      'invalid',
      `Centring between the pipes takes a pipe on the left and one on the right; ${found(pipes)}. Add the missing pipe, or set the centre from one pipe, from the wall or by hand.`,
      'pipes',
    )
  }
  return line('The centre line is midway between the pipes.', (left.xMm + right.xMm) / 2, [
    placeOf(left),
    placeOf(right),
  ])
}

function fromPipe({ pipes, pipeCentresMm }: CentreInput, side: Side): Outcome<CentreLine> {
  const pipe = pipeOn(pipes, side)
  if (pipe === undefined) {
    return refuse(
      'invalid',
      `There is no pipe on the ${side} to set out from; ${found(pipes)}. Add it, or set the centre in another way.`,
      'centre.side',
    )
  }
  const half = pipeCentresMm / 2
  const centres = given("The emitter's pipe centres", pipeCentresMm, 'mm', 'catalogue')
  const says = `The centre line is half the pipe centres to the ${side === 'left' ? 'right' : 'left'} of the ${side} pipe.`
  return line(says, side === 'left' ? pipe.xMm + half : pipe.xMm - half, [placeOf(pipe), centres])
}

function found(pipes: readonly Pipe[]): string {
  if (pipes.length === 0) return 'no pipe was surveyed'
  const sides = [...new Set(pipes.map((pipe) => pipe.side))].join(' and ')
  return `the survey has pipes on the ${sides} only`
}

function placeOf(pipe: Pipe): Derivation {
  return given(`The ${pipe.side} pipe, from the left end of the wall`, pipe.xMm, 'mm', 'survey')
}

function line(says: string, centreMm: number, from: readonly Derivation[]): Outcome<CentreLine> {
  return accept({ centreMm, why: because(says, centreMm, { unit: 'mm', from }) })
}
