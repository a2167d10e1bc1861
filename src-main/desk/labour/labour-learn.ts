import { given } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import { learnMinutes } from '../../engine/labour/learn-minutes.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

const weightId = 'labour.priorWeightCount'

export const labourLearn: UseCase<'labour.learn'> = async ({ prior, actuals, priorWeightCount }, desk) => {
  if (priorWeightCount !== undefined) {
    const why = given('How many tasks the prior weighs as much as', priorWeightCount)
    return learnMinutes({ prior, actuals }, { count: priorWeightCount, why })
  }
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const weight = { count: figure(figures.value, weightId), why: figureWhy(figures.value, weightId) }
  return learnMinutes({ prior, actuals }, weight)
}
