import fixings from '../../resources/settings/fixings.json' with { type: 'json' }
import hydraulics from '../../resources/settings/hydraulics.json' with { type: 'json' }
import labour from '../../resources/settings/labour.json' with { type: 'json' }
import labourTasks from '../../resources/settings/labour-tasks.json' with { type: 'json' }
import money from '../../resources/settings/money.json' with { type: 'json' }
import prices from '../../resources/settings/prices.json' with { type: 'json' }
import survey from '../../resources/settings/survey.json' with { type: 'json' }
import takeoff from '../../resources/settings/takeoff.json' with { type: 'json' }
import wall from '../../resources/settings/wall.json' with { type: 'json' }
import type {
  FigureInForce,
  FigureOverrides,
  Figures,
  Fixing,
  Setting,
  TaskMinutes,
} from '../domain/figures.ts'
import { accept } from '../domain/outcome.ts'
import type { Outcome, Problem } from '../domain/outcome.ts'
import type { Desk } from './desk.ts'

/** Every setting as it was delivered. That the files are what they claim to be is held by a test, not at each start. */
export const deliveredSettings: readonly Setting[] = [
  ...wall,
  ...takeoff,
  ...labour,
  ...money,
  ...prices,
  ...hydraulics,
  ...survey,
]
export const deliveredTasks: readonly TaskMinutes[] = labourTasks
export const deliveredFixings = fixings as readonly Fixing[]

const byId = new Map(deliveredSettings.map((setting) => [setting.id, setting]))

/** The figures as they stand on a day: delivered values, the firm's own in their place, and the job's before those. */
export async function figuresInForce(
  desk: Desk,
  on: string,
  jobOverrides: FigureOverrides = {},
): Promise<Outcome<Figures>> {
  const problems = Object.entries(jobOverrides).flatMap(([id, value]) => problemWith(id, value))
  if (problems.length > 0) return { ok: false, problems }
  const firm = await firmOverrides(desk)
  const settings = deliveredSettings.map((setting): readonly [string, FigureInForce] => {
    const own = jobOverrides[setting.id] ?? firm[setting.id]
    const delivered = valueOn(setting, on)
    const { says, unit } = setting
    if (own !== undefined) return [setting.id, { says, unit, value: own, source: "the firm's own figure" }]
    return [setting.id, { says, unit, value: delivered.value, source: delivered.source }]
  })
  const inForce = Object.fromEntries(settings)
  const tasks = await tasksInForce(desk, inForce)
  return tasks.ok ? accept({ settings: inForce, tasks: tasks.value, fixings: deliveredFixings }) : tasks
}

/** The minutes of each task: as delivered, or as the firm's own closed jobs taught. */
async function tasksInForce(desk: Desk, settings: Figures['settings']): Promise<Outcome<Figures['tasks']>> {
  const delivered = deliveredTasks.map((task) => [task.taskId, task] as const)
  if (desk.store === null) return accept(Object.fromEntries(delivered))
  const { taughtTasks } = await import('./after-job/taught-tasks.ts')
  const taught = await taughtTasks(desk.store, deliveredTasks, settings)
  if (!taught.ok) return taught
  const own = taught.value.map(({ inForce }) => [inForce.taskId, inForce] as const)
  return accept(Object.fromEntries([...delivered, ...own]))
}

async function firmOverrides(desk: Desk): Promise<FigureOverrides> {
  if (desk.store === null) return {}
  const { reading } = await import('../store/store.ts')
  const { readOverrides } = await import('../store/figures.ts')
  return reading(desk.store, readOverrides)
}

/** The last value that had begun by the day; before the first, the first. */
export function valueOn(setting: Setting, on: string): Setting['values'][number] {
  const begun = setting.values
    .filter((value) => value.from <= on)
    .toSorted((a, b) => (a.from < b.from ? 1 : -1))
  const value = begun[0] ?? setting.values[0]
  if (value === undefined) throw new Error(`The setting ${setting.id} has no value`)
  return value
}

function problemWith(id: string, value: number): readonly Problem[] {
  const path = `job.figures.${id}`
  const setting = byId.get(id)
  if (setting === undefined) {
    return [
      { code: 'invalid', message: `There is no figure called ${id}; figures.list names them all.`, path },
    ]
  }
  if (value >= setting.least && value <= setting.most) return []
  const message = `${setting.says} must be between ${setting.least} and ${setting.most}; it was ${value}.`
  return [{ code: 'invalid', message, path }]
}
