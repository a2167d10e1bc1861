import type { SideAsk } from './asks.ts'

/**
 * The body a valve needs, from the way the pipe comes and the way the tapping points.
 * A side tapping: from the floor angled, from the wall corner. A tapping that points down: from the floor straight, from the
 * wall angled.
 * @param side the pipe's origin and the tapping's direction
 * @source practice, no published source
 * @example valveBody({ pipe: { from: 'floor' }, tappingFaces: 'side' }) // => "angled"
 */
export function valveBody(side: {
  readonly pipe: Pick<SideAsk['pipe'], 'from'>
  readonly tappingFaces: SideAsk['tappingFaces']
}): 'straight' | 'angled' | 'corner' {
  if (side.tappingFaces === 'down') return side.pipe.from === 'floor' ? 'straight' : 'angled'
  return side.pipe.from === 'floor' ? 'angled' : 'corner'
}
