import { btuPerHourFromW } from '../../../src-main/engine/units/exact-units.ts'
import { plain } from '../figures-in-words.ts'
import type { Stays } from './use-for-house.ts'

export const words = {
  title: 'At another flow temperature',
  says: 'Try a flow temperature here. The job stays as it is until you take it over.',
  waiting: 'Put right what is marked, and the plot is here.',
  finding: 'Looking up the emitters',
  notFound: 'The plot can’t be drawn',
  flow: 'Flow temperature (°C)',
  box: 'In figures (°C)',
  keys: 'Arrow keys move by 1 K; with Shift, or Page up and Page down, by 5 K.',
  use: 'Use this temperature for the house',
  same: 'The job has this temperature already.',
  noNumber: (fromC: number, toC: number) => `Give a number from ${plain(fromC)} to ${plain(toC)}.`,
  axes: { flow: 'Flow temperature, °C', heat: 'Heat, W' },
  line: { output: 'Emitters give', load: 'Room needs', rough: 'Room needs (a guess)' },
  emitters: 'What the emitters give:',
  needs: 'What the room needs:',
  why: 'what the emitters give',
  whyLoad: 'what the room needs',
  gives: (room: string, flowC: number) => `What hangs in ${room} gives, at a flow of ${flowC} °C`,
  degrees: (figure: string) => `${figure} °C`,
} as const

/** Watts and BTU an hour side by side. */
export function bothUnits(watts: number): string {
  return `${plain(Math.round(watts))} W (${plain(Math.round(btuPerHourFromW(watts)))} BTU/h)`
}

type Read = {
  readonly name: string
  readonly flowC: number
  readonly spreadK: number
  readonly outputW: number
  readonly loadW: number
  readonly rough: boolean
}

/** What the plot shows at the temperature that is tried, in words. */
export function readOut({ name, flowC, spreadK, outputW, loadW, rough }: Read): readonly string[] {
  const returnC = plain(Math.round((flowC - spreadK) * 10) / 10)
  const at = `At ${plain(flowC)} °C flow and ${returnC} °C return, the emitters in ${name} give ${bothUnits(outputW)}.`
  const needs = `The room needs ${bothUnits(loadW)}${rough ? ', but only by a guess' : ''}.`
  const spareW = Math.round(outputW) - Math.round(loadW)
  const judged =
    spareW < 0
      ? `That is ${bothUnits(-spareW)} short.`
      : `That is enough, with ${bothUnits(spareW)} to spare.`
  return [at, needs, judged]
}

/** Where the two lines cross, in words. */
export function crossingSays(crossC: number | null, rough: boolean, toC: number): string {
  if (rough) return 'A guess backs no flow temperature: measure the room and the crossing is marked here.'
  if (crossC === null) return `The room is not warm at any flow up to ${plain(toC)} °C.`
  return `The room is warm from ${crossC.toFixed(1)} °C flow: there the two lines cross.`
}

/** What taking the temperature over does to emitters that stay. */
export function staysSays(stays: readonly Stays[]): string | null {
  const changed = stays.filter(({ oldW, newW }) => oldW !== newW)
  if (changed.length === 0) return null
  const each = changed.map(({ name, oldW, newW }) => `${name} from ${plain(oldW)} W to ${plain(newW)} W`)
  return `What stays gives another heat then, and is set with it: ${each.join('; ')}.`
}
