import type { SwapEffect } from './house-swap-effects.ts'

export type RankedSwap = Omit<SwapEffect, 'why'> & {
  readonly rank: number
  /** Where others come to the same for the house. */
  readonly tie?: { readonly with: readonly string[]; readonly says: string }
}

/**
 * Swaps in the order of what they do for the house, with equal ranks for equal effects (1, 1, 3) and the reason of each tie.
 * First those after which no room is short, by the house's flow; then by rooms still short, then by whole watts still missing.
 * Equal ones stand in the order of what they do for their own room, then as they came.
 * @param effects what each swap does
 * @param who whom the flow temperature is said of
 * @source practice, no published source
 * @example ranked([{ name: 'A', after: { reachable: true, flowC: 60, roomsShort: 0, shortW: 0 } }, { name: 'B', after: { reachable: true, flowC: 55, roomsShort: 0, shortW: 0 } }])[0].name // => 'B'
 */
export function ranked<E extends SwapEffect>(
  effects: readonly E[],
  who = 'the house',
): readonly (E & RankedSwap)[] {
  const inOrder = effects.toSorted((a, b) => forHouse(a, b) || forOwnRoom(a, b))
  return inOrder.map((effect, place) => {
    const rank = 1 + inOrder.findIndex((other) => forHouse(other, effect) === 0)
    const others = inOrder.filter((other, at) => at !== place && forHouse(other, effect) === 0)
    return others.length === 0 ? { ...effect, rank } : { ...effect, rank, tie: tieOf(effect, others, who) }
  })
}

function forHouse({ after: a }: SwapEffect, { after: b }: SwapEffect): number {
  if (a.reachable !== b.reachable) return a.reachable ? -1 : 1
  if (a.reachable) return (a.flowC ?? 0) - (b.flowC ?? 0)
  return a.roomsShort - b.roomsShort || Math.round(a.shortW) - Math.round(b.shortW)
}

/** A room that is still short stands behind every room that is warm. */
function forOwnRoom(a: SwapEffect, b: SwapEffect): number {
  return (a.roomAfterC ?? Number.MAX_VALUE) - (b.roomAfterC ?? Number.MAX_VALUE)
}

function tieOf(effect: SwapEffect, others: readonly SwapEffect[], who: string) {
  return { with: others.map(({ name }) => name), says: tieSays([effect, ...others], who) }
}

function tieSays(tied: readonly SwapEffect[], who: string): string {
  const { after } = tied[0] as SwapEffect
  const { worstRoom = '', flowC } = after
  const order = 'they stand in the order of what they do for their own rooms'
  const sameWorst = tied.every((one) => one.after.worstRoom === worstRoom)
  const outside = tied.every((one) => one.roomName !== worstRoom)
  if (!after.reachable) return `They leave the same rooms and watts short; ${order}.`
  if (flowC === undefined) return `No room that was judged needs heat after any of them; ${order}.`
  if (sameWorst && outside) {
    return `${worstRoom} holds ${who} at ${flowC} °C whichever is done, and none of them is in it; ${order}.`
  }
  if (sameWorst) return `${worstRoom} holds ${who} at ${flowC} °C after each of them; ${order}.`
  return `They come to the same tenth of a degree, ${flowC} °C, held by different rooms; ${order}.`
}
