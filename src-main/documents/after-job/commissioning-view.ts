import type { Commissioning } from '../../domain/follow-up/after-job.ts'
import { dayInWords } from '../days.ts'
import { counted, degrees, numberInWords, printedName, tight } from '../in-words.ts'
import { paperHead } from './material.ts'
import type { AfterMaterial, PaperHead } from './material.ts'

type Pair = readonly [label: string, says: string]

export type BalancingRow = {
  readonly room: string
  readonly emitter: string
  readonly flow: string
  readonly back: string
  readonly drop: string
  readonly turns: string
}

/** What was done and measured, in words. */
export type CommissioningView = PaperHead & {
  readonly doneOn: string
  readonly by: string
  readonly water: readonly Pair[]
  readonly pressure: readonly Pair[]
  readonly balancing: readonly BalancingRow[]
  readonly checks: readonly Pair[]
  readonly notes: readonly string[]
}

export function commissioningView(from: AfterMaterial, record: Commissioning): CommissioningView {
  return {
    ...paperHead(from),
    doneOn: dayInWords(record.onDay),
    by: record.by,
    water: [...flushed(record), ...dosed(record)],
    pressure: pressures(record),
    balancing: record.balancing.map((row) => balanced(row, from)),
    checks: [
      ['Joints looked over for leaks', record.leaksLookedFor ? 'Yes' : 'No'],
      ...fillingLoop(record, from),
    ],
    notes: (record.notes ?? '').split(/\n+/).filter((text) => text.trim() !== ''),
  }
}

const flushWords = {
  none: 'Not cleaned',
  water: 'Flushed with clean water',
  power: 'Flushed by machine',
  cleaner: 'Cleaned with a chemical cleaner and flushed',
} as const

function flushed({ flush: { how, says = '' } }: Commissioning): readonly Pair[] {
  return [['Cleaning', says.trim() === '' ? flushWords[how] : `${flushWords[how]}. ${says.trim()}`]]
}

function dosed({ dose: { product, litres, testedGood } }: Commissioning): readonly Pair[] {
  const dose: Pair =
    litres === 0
      ? ['Water treatment', product === '' ? 'None added' : `${product}: none added`]
      : [
          'Water treatment',
          `${numberInWords(litres)}${tight}litres of ${product === '' ? 'inhibitor' : product}`,
        ]
  if (testedGood === undefined) return [dose]
  return [
    dose,
    ['Water tested for its strength', testedGood ? 'Tested, and strong enough' : 'Tested, and too weak'],
  ]
}

const inBar = (bar: number) => `${numberInWords(bar)}${tight}bar`

/** What the gauge did; whether that is good enough is for whoever signs. */
function pressures({ pressureTest }: Commissioning): readonly Pair[] {
  const { testBar, minutes, endBar, coldFillBar } = pressureTest
  if (testBar === 0) return [['Pressure test', 'None was made'], ...coldFill(coldFillBar)]
  const fall = Math.round((testBar - endBar) * 1000) / 1000
  const moved = fall === 0 ? 'It held.' : `It ${fall > 0 ? 'fell' : 'rose'} by ${inBar(Math.abs(fall))}.`
  return [
    ['Tested at', `${inBar(testBar)} for ${counted(minutes, 'minute')}`],
    ['At the end of the test', `${inBar(endBar)}. ${moved}`],
    ...coldFill(coldFillBar),
  ]
}

function coldFill(bar: number | undefined): readonly Pair[] {
  return bar === undefined ? [] : [['Left cold at', inBar(bar)]]
}

const open = '–'

function balanced(
  { swapId, roomName, flowC, returnC, turnsOpen }: Commissioning['balancing'][number],
  { emitters }: AfterMaterial,
): BalancingRow {
  const both = flowC !== undefined && returnC !== undefined
  return {
    room: roomName,
    emitter: printedName(emitters[swapId]?.name ?? open),
    flow: flowC === undefined ? open : degrees(flowC),
    back: returnC === undefined ? open : degrees(returnC),
    drop: both ? `${numberInWords(Math.round((flowC - returnC) * 10) / 10)}${tight}K` : open,
    turns: turnsOpen === undefined ? open : numberInWords(turnsOpen),
  }
}

/** An open vented system has no filling loop. */
function fillingLoop({ fillingLoopOff }: Commissioning, { job }: AfterMaterial): readonly Pair[] {
  if (job.survey.system.kind === 'openVented') return []
  return [['Filling loop shut and taken off', fillingLoopOff ? 'Yes' : 'No']]
}
