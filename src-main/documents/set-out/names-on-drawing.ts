import type { Emitter } from '../../domain/item.ts'
import type { Obstacle, Wall } from '../../domain/wall.ts'
import { cutTo } from './closeness.ts'

const kinds: Readonly<Record<Exclude<Obstacle['kind'], 'other'>, string>> = {
  window: 'Window',
  windowBoard: 'Window board',
  door: 'Door',
  doorSwing: 'Door swing',
  socket: 'Socket',
  switch: 'Switch',
  mirror: 'Mirror',
  basin: 'Basin',
  bath: 'Bath',
  shelf: 'Shelf',
  cable: 'Cable',
  pipeInWall: 'Pipe',
}

/** Longer names than this would lie over the figures. */
const mostLetters = 16

/** The wall with names short enough for its drawing: an obstacle with a long one is called what it is. */
export function shortNamed(wall: Wall): Wall {
  if (wall.obstacles === undefined) return wall
  return { ...wall, obstacles: wall.obstacles.map((one) => ({ ...one, name: shortName(one) })) }
}

function shortName({ name, kind }: Obstacle): string {
  if (Array.from(name).length <= mostLetters) return name
  return kind === 'other' ? cutTo(name, mostLetters) : kinds[kind]
}

/** Short, because the sheet's title has the whole name and the drawing needs its room for figures. */
export function emitterOnDrawing({ form }: Pick<Emitter, 'form'>): string {
  return form.kind === 'towelRail' ? 'New rail' : 'New radiator'
}
