import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { unitOfKind } from '../../domain/item.ts'
import type { ItemKind, Unit, WantedSpec } from '../../domain/item.ts'
import type { PipePiece } from '../../domain/take-off.ts'
import type { Asks, Per } from './asks.ts'

/** What a rule asks for: a kind of thing and what it must be, never a row of the catalogue. */
export type Need = {
  readonly kind: ItemKind | 'emitter'
  readonly spec: WantedSpec
  readonly quantity: number
  readonly unit: Unit
  readonly pieces?: readonly PipePiece[]
  readonly why: Derivation
}

/** The settings that a rule named, and no others. */
export type Named = {
  readonly value: (id: string) => number
  readonly why: (id: string) => Derivation
}

/** An example: facts over the typical ones, and what the rule gives for them (kind and quantity). */
export type Example<P extends Per> = {
  readonly says: string
  readonly ask: Partial<Asks[P]>
  readonly gives: readonly (readonly [kind: Need['kind'], quantity: number])[]
}

export type Rule<P extends Per = Per> = {
  readonly id: string
  readonly per: P
  readonly source: string
  readonly says: string
  /** Ids of the settings that it reads. */
  readonly uses: readonly string[]
  readonly gives: (ask: Asks[P], use: Named) => readonly Need[]
  readonly examples: readonly Example<P>[]
}

/** A rule of any kind, for lists. */
export type AnyRule = { readonly [P in Per]: Rule<P> }[Per]

/**
 * The settings that `ids` name, ready for a rule; another id is our mistake, so it throws.
 * @source practice, no published source
 * @example named({ settings: { a: { value: 2 } } }, ['a']).value('a') // => 2
 */
export function named(figures: Figures, ids: readonly string[]): Named {
  const allowed = (id: string) => {
    if (!ids.includes(id)) throw new Error(`A rule reads the setting ${id}, which it does not name`)
    return id
  }
  return { value: (id) => figure(figures, allowed(id)), why: (id) => figureWhy(figures, allowed(id)) }
}

/**
 * A need with its reason: `says` a sentence, `from` the figures that the quantity was worked out from.
 * @source practice, no published source
 * @example need('pipe', { outsideMm: 15 }, 1.5, { says: 'A run.' }).unit // => "m"
 */
export function need(
  kind: Need['kind'],
  spec: WantedSpec,
  quantity: number,
  reason: {
    readonly says: string
    readonly from?: readonly Derivation[]
    readonly pieces?: readonly PipePiece[]
  },
): Need {
  const unit = kind === 'emitter' ? 'each' : unitOfKind[kind]
  const why = because(reason.says, quantity, { unit, from: reason.from ?? [] })
  return {
    kind,
    spec,
    quantity,
    unit,
    why,
    ...(reason.pieces === undefined ? {} : { pieces: reason.pieces }),
  }
}
