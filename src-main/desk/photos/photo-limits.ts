import { figure } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Desk } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

export type PhotoLimits = { readonly mostBytes: number; readonly mostPx: number }

/** How large a photo may be, by the firm's settings. */
export async function photoLimits(desk: Desk): Promise<Outcome<PhotoLimits>> {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  return accept({
    mostBytes: Math.floor(figure(figures.value, 'photo.mostKB') * 1024),
    mostPx: Math.floor(figure(figures.value, 'photo.mostPx')),
  })
}
