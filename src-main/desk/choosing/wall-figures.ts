import { accept } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

/** What a window needs to set out a wall by itself, with the same answer as the desk's. */
export const wallFigures: UseCase<'wall.figures'> = async ({ on, figures }, desk) => {
  const inForce = await figuresInForce(desk, on ?? desk.today, figures)
  if (!inForce.ok) return inForce
  const settings = Object.entries(inForce.value.settings).filter(([id]) => id.startsWith('wall.'))
  return accept({ settings: Object.fromEntries(settings), fixings: inForce.value.fixings })
}
