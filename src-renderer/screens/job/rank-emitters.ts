import type { Emitter } from '../../../src-main/domain/item.ts'
import { emitterOutput } from '../../../src-main/engine/heat/emitter-output.ts'

/** An emitter as the catalogue gives it, with the cheapest price that somebody asks. */
export type Offered = { readonly emitter: Emitter; readonly fromPence: number | null }

/** One with the heat that it gives at the job's temperatures, where that can be worked out. */
export type Ranked = Offered & { readonly givesW: number | null }

export type At = { readonly flowC: number; readonly returnC: number; readonly roomC: number }

/** What each gives in the room; when `needW` is told, those that give enough come first, the cheapest first among them. */
export function rankEmitters(
  offered: readonly Offered[],
  at: At | null,
  needW: number | null,
): readonly Ranked[] {
  const ranked = offered.map((one): Ranked => ({
    ...one,
    givesW: at === null ? null : givenW(one.emitter, at),
  }))
  if (needW === null) return ranked
  const enough = ({ givesW }: Ranked) => givesW !== null && Math.round(givesW) >= Math.round(needW)
  const cost = ({ fromPence }: Ranked) => fromPence ?? Number.MAX_SAFE_INTEGER
  return [
    ...ranked.filter(enough).toSorted((a, b) => cost(a) - cost(b)),
    ...ranked.filter((one) => !enough(one)).toSorted((a, b) => (b.givesW ?? 0) - (a.givesW ?? 0)),
  ]
}

function givenW({ ratedW, exponent, rating }: Emitter, at: At): number | null {
  const output = emitterOutput({ ratedW, exponent, ...at, ...(rating === undefined ? {} : { rating }) })
  return output.ok ? output.value.watts : null
}
