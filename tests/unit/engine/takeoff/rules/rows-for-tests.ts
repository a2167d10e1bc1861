import { expect, it } from 'vitest'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../../src-main/domain/figures.ts'
import type { Asks, Per } from '../../../../../src-main/engine/takeoff/asks.ts'
import { named } from '../../../../../src-main/engine/takeoff/rule.ts'
import type { Need, Rule } from '../../../../../src-main/engine/takeoff/rule.ts'
import { typical } from '../../../../typical-asks.ts'

/** Round figures of our own, so that every sum here is done in the head: not those that the firm starts with. */
const values: Readonly<Record<string, number>> = {
  'fixing.boardThicknessMm': 18,
  'fixing.boardHeightMm': 150,
  'making.fillerWasteRatio': 0.25,
  'making.tileSealantMl': 3,
  'making.collarSealantMl': 6,
  'making.touchUpM2': 0.05,
  'pipe.insulationWallMm': 13,
  'seal.tapeTurnsCount': 10,
  'seal.tapeOverlapRatio': 0.5,
  'sundry.dustSheetsPerRoomCount': 2,
  'water.inhibitorLitresPerLitre': 50,
  'water.cleanerLitresPerLitre': 25,
}

export const figures: Figures = {
  settings: Object.fromEntries(
    Object.entries(values).map(([id, value]) => [id, { says: id, value, unit: 'Ratio', source: 'the firm' }]),
  ),
  tasks: {},
  fixings: [],
}

/** The leaf that a setting leaves in a reason: its own words, value, unit and source. */
export const setting = (id: string): Derivation => named(figures, [id]).why(id)

/** What a rule should ask for: the thing in full, and its reason in full. */
export type Wanted = Pick<Need, 'kind' | 'spec' | 'quantity' | 'unit' | 'pieces'> & {
  /** The sentence, or a matcher of it. */
  readonly says: unknown
  readonly from: readonly Derivation[]
}

/** One row: a rule, what differs from the plainest case, and every need that it should give, worked out by hand. */
export function row<P extends Per>(
  says: string,
  [rule, over]: readonly [Rule<P>, Partial<Asks[P]>],
  wanted: readonly Wanted[],
): void {
  it(`${rule.id}: ${says}`, () => {
    const ask: Asks[P] = { ...typical[rule.per], ...over }
    const needs = rule.gives(ask, named(figures, rule.uses))
    expect(needs).toEqual(
      wanted.map(({ says: sentence, from, quantity, unit, ...thing }) => {
        const near = expect.closeTo(quantity, 6)
        return { ...thing, quantity: near, unit, why: { says: sentence, value: near, unit, from } }
      }),
    )
  })
}
