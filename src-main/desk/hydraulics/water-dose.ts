import { figure, figureWhy } from '../../domain/figures.ts'
import { doseInContainers } from '../../engine/water/dose-containers.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

const treatedBy = {
  inhibitor: 'water.inhibitorLitresPerLitre',
  cleaner: 'water.cleanerLitresPerLitre',
} as const

export const waterDose: UseCase<'water.dose'> = async (input, desk) => {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const { product, contentLitres, drainedShare = 1, treatedLitresPerLitre, packs } = input
  const asked = { contentLitres, drainedShare, packs }
  if (treatedLitresPerLitre !== undefined) return doseInContainers({ ...asked, treatedLitresPerLitre })
  return doseInContainers({
    ...asked,
    treatedLitresPerLitre: figure(figures.value, treatedBy[product]),
    treatedWhy: figureWhy(figures.value, treatedBy[product]),
  })
}
