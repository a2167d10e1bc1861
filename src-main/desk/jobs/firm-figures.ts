import type { Setting } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import { readOverrides, setOverride } from '../../store/figures.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { deliveredSettings, valueOn } from '../figures-in-force.ts'
import { storeOf } from '../store-of.ts'
import { figureProblems } from './figure-problems.ts'

export const figuresOwn: UseCase<'figures.own'> = async (_input, desk) => {
  const own = await reading(storeOf(desk), readOverrides)
  const figures = deliveredSettings.map((setting) => ({
    ...described(setting, desk.today),
    own: own[setting.id] ?? null,
  }))
  return accept({ on: desk.today, figures })
}

function described(setting: Setting, today: string) {
  const { id, says, unit, least, most } = setting
  const { value, source } = valueOn(setting, today)
  return { id, says, unit, least, most, usual: value, source }
}

export const figuresSave: UseCase<'figures.save'> = ({ figures }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const problems = figureProblems(figures, deliveredSettings)
    if (problems.length > 0) return { ok: false, problems }
    for (const [id, value] of Object.entries(figures)) await setOverride(tx, id, value)
    return accept({ own: await readOverrides(tx) })
  })
