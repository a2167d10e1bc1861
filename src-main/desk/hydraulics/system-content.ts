import type { InputOf } from '../../contract/requests.ts'
import { isEmitter } from '../../domain/catalogue.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { surveyedContent } from '../../engine/water/surveyed-content.ts'
import type { EmitterWater } from '../../engine/water/surveyed-content.ts'
import { systemContent as contentOf } from '../../engine/water/system-dose.ts'
import { itemsOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { deliveredBores } from './pipe-bores.ts'

export const systemContent: UseCase<'system.content'> = async (input, desk) => {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const { surveyedLitres, boilerKW, emitters, pipes, boilerLitres } = input
  const allowed = {
    boilerKW,
    litresPerKW: input.litresPerKW ?? figure(figures.value, 'water.litresPerKW'),
    ...(input.litresPerKW === undefined
      ? { allowanceWhy: figureWhy(figures.value, 'water.litresPerKW') }
      : {}),
  }
  const inParts = emitters !== undefined || pipes !== undefined || boilerLitres !== undefined
  if (!inParts) return contentOf({ surveyedLitres, ...allowed })
  if (surveyedLitres !== undefined) {
    const message = 'Give the water of the whole system, or its parts, not both.'
    return refuse('conflict', message, 'surveyedLitres')
  }
  const waters = emitters === undefined ? accept(undefined) : await watersOf(emitters, desk)
  if (!waters.ok) return waters
  return surveyedContent({ emitters: waters.value, pipes, boilerLitres, ...allowed }, deliveredBores)
}

type Asked = NonNullable<InputOf<'system.content'>['emitters']>

/** Emitters that are named by the catalogue take their water from it. */
async function watersOf(emitters: Asked, desk: Desk): Promise<Outcome<readonly EmitterWater[]>> {
  const ids = emitters.flatMap((one) => ('itemId' in one ? [one.itemId] : []))
  const items = ids.length === 0 ? [] : await itemsOf(desk, ids)
  const found = new Map(items.filter(isEmitter).map((emitter) => [emitter.itemId, emitter]))
  const waters: EmitterWater[] = []
  for (const [index, one] of emitters.entries()) {
    if (!('itemId' in one)) {
      waters.push(one)
      continue
    }
    const emitter = found.get(one.itemId)
    if (emitter === undefined) {
      const message = `The catalogue has no emitter ${one.itemId}: name one that it has, or give its water.`
      return refuse('not-found', message, `emitters[${index}].itemId`, 'Look for one with catalogue.search.')
    }
    waters.push({ name: emitter.name, waterLitres: emitter.waterLitres, count: one.count })
  }
  return accept(waters)
}
