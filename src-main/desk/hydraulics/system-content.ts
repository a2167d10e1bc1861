import { figure, figureWhy } from '../../domain/figures.ts'
import { systemContent as contentOf } from '../../engine/water/system-dose.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

export const systemContent: UseCase<'system.content'> = async (input, desk) => {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const { litresPerKW } = input
  if (litresPerKW !== undefined) return contentOf({ ...input, litresPerKW })
  return contentOf({
    ...input,
    litresPerKW: figure(figures.value, 'water.litresPerKW'),
    allowanceWhy: figureWhy(figures.value, 'water.litresPerKW'),
  })
}
