import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { PipeOffset } from '../../domain/set-out.ts'
import type { Pipe } from '../../domain/wall.ts'
import { pipeOn } from './centre-line.ts'
import { mmInWords } from './in-words.ts'
import type { ValvePlace } from './place-emitter.ts'

export type PipesAtValves = {
  readonly pipes: readonly Pipe[]
  readonly valves: readonly ValvePlace[]
  readonly offsets: readonly PipeOffset[]
}

/**
 * What to mind about the pipes: a valve without a pipe, a second pipe on a side, a left pipe to the right of the right one, a pipe end
 * whose height nobody measured, and a set-off with too little height above the floor.
 *
 * @param found pipes as surveyed, valves, and how each pipe is brought to its valve
 * @param figures the firm's figures: wall.stubMm, wall.leastPieceMm
 * @source practice, no published source
 * @example pipeWarnings({ pipes: [], valves: [{ side: 'left', xMm: 420, yMm: 235 }], offsets: [] }, { settings: {} }).length // => 1
 */
export function pipeWarnings(found: PipesAtValves, figures: Figures): readonly string[] {
  return [
    ...found.valves.flatMap((valve) => atValve(valve, found, figures)),
    ...found.pipes.filter((pipe) => pipeOn(found.pipes, pipe.side) !== pipe).map(second),
    ...crossed(found.pipes),
  ]
}

function atValve(valve: ValvePlace, { pipes, offsets }: PipesAtValves, figures: Figures): readonly string[] {
  const pipe = pipeOn(pipes, valve.side)
  if (pipe === undefined)
    return [`No pipe was surveyed on the ${valve.side}: how that valve is piped is not worked out.`]
  const unknown =
    pipe.yMm === undefined
      ? [
          `The height of the ${pipe.side} pipe's end was not surveyed: it is taken to reach its valve, ${mmInWords(valve.yMm)} above the floor.`,
        ]
      : []
  const repiped = offsets.some(
    (offset) => offset.side === pipe.side && offset.remedy === 'repipe' && offset.elbows > 0,
  )
  const room = valve.yMm - Math.min(figure(figures, 'wall.stubMm'), pipe.yMm ?? valve.yMm)
  const low =
    repiped && pipe.from === 'floor' && room < figure(figures, 'wall.leastPieceMm')
      ? [
          `There is little height for a set-off under the ${pipe.side} valve, ${mmInWords(valve.yMm)} above the floor: it may have to be made under the floor.`,
        ]
      : []
  return [...unknown, ...low]
}

function second(pipe: Pipe): string {
  return `There is more than one pipe on the ${pipe.side}; the one ${mmInWords(pipe.xMm)} from the left end of the wall is left out.`
}

function crossed(pipes: readonly Pipe[]): readonly string[] {
  const left = pipeOn(pipes, 'left')
  const right = pipeOn(pipes, 'right')
  if (left === undefined || right === undefined || left.xMm <= right.xMm) return []
  return ['The left pipe stands to the right of the right one: check the survey, or the pipes cross.']
}
