import { figure, figureWhy } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { deliveredSettings, figuresInForce } from '../figures-in-force.ts'

export const figuresOfDay: UseCase<'figures.inForce'> = async ({ on }, desk) => {
  const figures = await figuresInForce(desk, on)
  if (!figures.ok) return figures
  const settings = deliveredSettings.map(({ id, says, unit, least, most }) => ({
    id,
    says,
    unit,
    least,
    most,
    value: figure(figures.value, id),
    source: figureWhy(figures.value, id).source ?? '',
  }))
  return accept({ settings })
}
