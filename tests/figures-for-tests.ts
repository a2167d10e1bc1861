import { readdirSync, readFileSync } from 'node:fs'
import { z } from 'zod'
import { fixing, setting, taskMinutes } from '../src-main/domain/figures.ts'
import type { FigureInForce, Figures, Setting } from '../src-main/domain/figures.ts'

const folder = new URL('../resources/settings/', import.meta.url)

/** Every default figure as it stands on a day, read from the settings files and checked against their schemas. */
export function defaultFigures(day: string): Figures {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'))
  const settings = names.flatMap((name) => settingsIn(name))
  const tasks = names.includes('labour-tasks.json')
    ? z.array(taskMinutes).parse(read('labour-tasks.json'))
    : []
  return {
    settings: Object.fromEntries(settings.map((one) => [one.id, inForce(one, day)])),
    tasks: Object.fromEntries(tasks.map((task) => [task.taskId, task])),
    fixings: names.includes('fixings.json') ? z.array(fixing).parse(read('fixings.json')) : [],
  }
}

/** Files whose entries have dated values hold settings. */
function settingsIn(name: string): readonly Setting[] {
  const entries = read(name)
  if (!Array.isArray(entries)) return []
  const dated = entries.filter(
    (entry: unknown) => typeof entry === 'object' && entry !== null && 'values' in entry,
  )
  return z.array(setting).parse(dated)
}

function read(name: string): unknown {
  return JSON.parse(readFileSync(new URL(name, folder), 'utf8'))
}

function inForce({ id, says, unit, values }: Setting, day: string): FigureInForce {
  const newest = values
    .filter(({ from }) => from <= day)
    .sort((a, b) => a.from.localeCompare(b.from))
    .at(-1)
  if (newest === undefined) throw new Error(`${id} has no value on ${day}`)
  return { says, unit, value: newest.value, source: newest.source }
}
