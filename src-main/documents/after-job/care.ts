import type { Emitter } from '../../domain/item.ts'
import type { Swap, System } from '../../domain/job.ts'
import { capital, listed, numberInWords, tight } from '../in-words.ts'

// Care, venting and the use of valves: practice, no published source. What a maker's own leaflet says goes before all of it.

type Finish = Emitter['finish']

const careOf: Readonly<Record<Finish, string>> = {
  white:
    'White enamel: wipe it when it is cold with a soft, damp cloth and a little washing-up liquid, and dry it. No scouring powder, no bleach.',
  chrome:
    'Chrome: wipe it when it is cold with a soft, damp cloth and dry it at once, so that no lime dries on. No bleach, no limescale remover, no polish: they take the chrome off.',
  black:
    'Black finish: wipe it when it is cold with a soft, damp cloth and dry it. No polish and no scouring pad: they leave it shiny in patches.',
  grey: 'Grey finish: wipe it when it is cold with a soft, damp cloth and dry it. No polish and no scouring pad: they leave it shiny in patches.',
}

/** How each finish in the house is looked after, each once and with the rooms that it is in. */
export function careSentences(
  fitted: readonly { readonly roomName: string; readonly finish: Finish }[],
): readonly string[] {
  const general = [
    'Paint over a radiator takes some of its heat away and the maker’s guarantee with it; ask us first.',
    'Nothing heavy is hung on it, and nobody stands or leans on it: the brackets carry the radiator and its water.',
  ]
  const own = [...Map.groupBy(fitted, ({ finish }) => finish)].map(
    ([finish, same]) => `${careOf[finish]} (${listed([...new Set(same.map(({ roomName }) => roomName))])})`,
  )
  return fitted.length === 0 ? [] : [...own, ...general]
}

export type ValveSet = 'thermostaticAndLockshield' | 'manualPair' | 'keep'

const valveWords: Readonly<Record<ValveSet, readonly string[]>> = {
  thermostaticAndLockshield: [
    'The thermostatic valve is the one with a numbered head. It feels how warm the room is: turn it up for a warmer room, down for a cooler one. Leave its head free: behind a curtain or a shelf it takes the warmth there for the room’s.',
    'The lockshield valve is the one under a plain cap, at the other end. It is set so that every radiator gets its share of the water. Leave it as it is; if it has to be shut, count the turns, so that it can go back to where it was.',
  ],
  manualPair: [
    'Of the two manual valves, one turns the radiator on and off: clockwise shuts it. The other sets its share of the water and is left as it is.',
  ],
  keep: ['The valves are the ones that were there before; they work as they did.'],
}

/** How each kind of valve is used, with the rooms that have it. */
export function valveSentences(
  sets: readonly { readonly roomName: string; readonly set: ValveSet; readonly thermostatHere: boolean }[],
): readonly { readonly rooms: string; readonly says: readonly string[] }[] {
  return [...Map.groupBy(sets, ({ set }) => set)].map(([set, same]) => {
    const here = [...new Set(same.filter((one) => one.thermostatHere).map(({ roomName }) => roomName))]
    const thermostat =
      here.length === 0
        ? []
        : [
            `${capital(listed(here))}: the room’s thermostat turns the heating on and off, so leave both valves open there.`,
          ]
    return {
      rooms: listed([...new Set(same.map(({ roomName }) => roomName))]),
      says: [...valveWords[set], ...thermostat],
    }
  })
}

/** The valves that a swap has: where the thermostat is, nothing may close by itself. */
export function valveSetOf({ valves }: Pick<Swap, 'valves'>, thermostatHere: boolean): ValveSet {
  return valves.kind !== 'keep' && thermostatHere ? 'manualPair' : valves.kind
}

/** How air is let out, step by step, and what is done about the pressure afterwards. */
export function ventingSteps(kind: System['kind'], coldFillBar: number | undefined): readonly string[] {
  const left = coldFillBar === undefined ? '' : ` (${numberInWords(coldFillBar)}${tight}bar when we left)`
  const afterwards =
    kind === 'sealed'
      ? `Look at the pressure gauge when the heating is cold. If it stands well below where it was${left}, top it up as your boiler’s own book shows, or ring us.`
      : 'The tank in the loft makes up the water by itself. If it runs dry or runs over, ring us.'
  return [
    'A radiator that gurgles, or is cold at its top and warm below, has air in it.',
    'Turn the heating off and let it cool: the water behind the vent can scald.',
    'Hold a cloth under the vent, put the key on and turn it half a turn to the left. Air hisses out.',
    'As soon as water comes, turn it back and dry the radiator.',
    afterwards,
    'If air comes back again and again, something is drawing it in: ring us.',
  ]
}

type Told = {
  readonly frail: boolean
  readonly element: boolean
  readonly dosedWith: string | null
  readonly rail: boolean
}

/** What to be careful of. Gas, electricity and the water's treatment are left to those who are qualified for them. */
export function cautionSentences({ frail, element, dosedWith, rail }: Told): readonly string[] {
  const hot = `Radiators, towel rails and their pipes get hot enough to burn. Keep small children${frail ? ', and anybody who would not pull away by themselves,' : ''} from lying or leaning against them${frail ? '; ask us about a cover or a lower temperature' : ''}.`
  return [
    hot,
    ...(rail
      ? [
          'Dry only what water has been washed through; nothing with solvent, paint or oil on it goes on a rail.',
        ]
      : []),
    dosedWith === null
      ? 'The water in the heating may hold chemicals against rust. Do not drink it or put it on plants; have its strength tested when the heating is serviced, by somebody who knows the treatment.'
      : `The water in the heating holds ${dosedWith} against rust. Do not drink it or put it on plants; have its strength tested when the heating is serviced, by somebody who knows the treatment.`,
    'Boiler and gas: leave covers and settings inside alone. Only a registered gas engineer works on them. If you smell gas, open windows, touch no switch, go outside and ring the gas emergency service.',
    element
      ? 'The towel rail’s electric element, and anything else electrical: only a qualified electrician opens or connects it. Switch it off before you clean the rail.'
      : 'Anything electrical on the heating: only a qualified electrician opens or connects it.',
    'If water drips, turn the heating off, put a bowl under it and ring us.',
  ]
}
