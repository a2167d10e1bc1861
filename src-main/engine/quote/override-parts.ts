import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Override } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { unitOfKind } from '../../domain/item.ts'
import type { Found } from '../takeoff/buying/choose-item.ts'
import { purchaseOf } from '../takeoff/resolve.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'

type With = { readonly shelf: Shelf; readonly figures: Figures }

/**
 * The parts list with the quantities and items that a person put in place of what was worked out, each line bought anew and its
 * reason kept. Pipe of another quantity is bought by the metre, for the pieces no longer say how much it is; an item that a
 * second line has too is bought apart from it.
 * Refuses a line that is not there, one overridden twice, an emitter in place of another (that is the swap's), an item that is
 * no part or is counted in another unit, and one that nobody sells in such a quantity.
 * @param parts the parts list as it was worked out
 * @param overrides what a person changed, with reasons; those of prices alone are left to `overridePrices`
 * @param more the catalogue with the prices in force, and the firm's figures
 * @source practice, no published source
 * @example overrideParts({ takeOff: { lines: [] }, purchases: [] }, [], { figures: { settings: {} } }).value.purchases // => []
 */
export function overrideParts(
  parts: PricedTakeOff,
  overrides: readonly Override[],
  more: With,
): Outcome<PricedTakeOff> {
  const problems: Problem[] = []
  const bought = new Map(parts.purchases.map((purchase) => [purchase.lineId, purchase]))
  const lines = parts.takeOff.lines.map((line, index) => {
    const at = overrides.findIndex((one) => one.lineKey === line.lineKey)
    const override = overrides[at]
    if (override === undefined || !changesPart(override)) return line
    const lineId = `part-${index + 1}`
    const changed = overridden({ line, override, was: bought.get(lineId), lineId }, more)
    if (!changed.ok) {
      problems.push(...changed.problems.map((one) => ({ ...one, path: `job.overrides[${at}].${one.path}` })))
      return line
    }
    if (changed.value.purchase !== null) bought.set(lineId, changed.value.purchase)
    return changed.value.line
  })
  problems.push(...lostParts(parts.takeOff.lines, overrides))
  if (problems.length > 0) return { ok: false, problems }
  const purchases = lines.flatMap((_, index) => bought.get(`part-${index + 1}`) ?? [])
  return accept({ ...parts, takeOff: { ...parts.takeOff, lines }, purchases })
}

function changesPart({ quantity, itemId }: Override): boolean {
  return quantity !== undefined || itemId !== undefined
}

function lostParts(lines: readonly TakeOffLine[], overrides: readonly Override[]): readonly Problem[] {
  const keys = new Set(lines.map((line) => line.lineKey))
  return overrides.flatMap((override, at): readonly Problem[] => {
    const path = `job.overrides[${at}]`
    const { lineKey, netPence } = override
    if (!changesPart(override) && netPence === undefined) {
      const message = `The override of ${lineKey} changes nothing; give it a quantity, an item or a price.`
      return [{ code: 'invalid', message, path }]
    }
    if (overrides.findIndex((one) => one.lineKey === lineKey) < at) {
      const message = `${lineKey} is overridden twice; put both changes in one override.`
      return [{ code: 'invalid', message, path: `${path}.lineKey` }]
    }
    if (!changesPart(override) || keys.has(lineKey)) return []
    const message = `The parts list has no line ${lineKey} to change; takeoff.job names its lines.`
    return [{ code: 'invalid', message, path: `${path}.lineKey` }]
  })
}

type Change = {
  readonly line: TakeOffLine
  readonly override: Override
  readonly was: Purchase | undefined
  readonly lineId: string
}
type Changed = { readonly line: TakeOffLine; readonly purchase: Purchase | null }

function overridden({ line, override, was, lineId }: Change, { shelf, figures }: With): Outcome<Changed> {
  const item = itemFor(line, override, shelf)
  if (!item.ok) return item
  const { pieces, gap: _gap, ...bare } = line
  const kept = override.quantity === undefined && pieces !== undefined ? { pieces } : {}
  const quantity = override.quantity ?? line.quantity
  const why = whyChanged(line, override, item.value)
  const itemId = item.value?.itemId ?? was?.itemId
  const before = { name: line.name, quantity: line.quantity }
  if (itemId === undefined || was?.oneOff === true) return lacking({ line, quantity, why, was, before })
  const name = item.value?.name ?? line.name
  const need = { quantity, unit: line.unit, ...kept }
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const purchase = purchaseOf(need, { itemId, name }, { lineId, kerfMm, shelf })
  if (!purchase.ok) return at(override.itemId === undefined ? 'quantity' : 'itemId', purchase.problems)
  const generic = item.value?.generic ?? line.generic
  return accept({
    line: { ...bare, ...kept, quantity, name, itemId, generic, was: before, why },
    purchase: purchase.value,
  })
}

/** A gap stays a gap, of the new quantity; a thing bought elsewhere can only be filled in anew. */
function lacking(left: {
  readonly line: TakeOffLine
  readonly quantity: number
  readonly why: Derivation
  readonly was: Purchase | undefined
  readonly before: NonNullable<TakeOffLine['was']>
}): Outcome<Changed> {
  const { line, quantity, why, was, before } = left
  if (was === undefined) return accept({ line: { ...line, quantity, was: before, why }, purchase: null })
  const message = `${line.name} is bought elsewhere at a price by hand; change what it was filled with.`
  return at('lineKey', [{ code: 'invalid', message }])
}

function at(field: string, problems: readonly Problem[]): Outcome<never> {
  return { ok: false, problems: problems.map((one) => ({ ...one, path: field })) }
}

/** The item that a person put in; null where the item stays. */
function itemFor(line: TakeOffLine, { itemId }: Override, shelf: Shelf): Outcome<Found | null> {
  if (itemId === undefined) return accept(null)
  if (line.itemKind === 'emitter') {
    const message = 'An emitter is changed in its swap, for the room must be reckoned again; not on its line.'
    return at('itemId', [{ code: 'invalid', message }])
  }
  const part = [...shelf.parts.values()].flat().find((one) => one.itemId === itemId)
  if (part === undefined) {
    const message = `The catalogue has no part ${itemId} in use; catalogue.search finds those that it has.`
    return at('itemId', [{ code: 'not-found', message }])
  }
  const unit = unitOfKind[part.kind]
  if (unit === line.unit) return accept(part)
  const message = `${part.name} is counted in ${unit} and this line in ${line.unit}; choose one counted alike.`
  return at('itemId', [{ code: 'invalid', message }])
}

function whyChanged(line: TakeOffLine, override: Override, item: Found | null): Derivation {
  const { quantity, reason } = override
  const changes = [
    ...(quantity === undefined ? [] : [`${quantity} instead of ${line.quantity}`]),
    ...(item === null ? [] : [`${item.name} instead of ${line.name}`]),
  ]
  return because(`Changed by hand: ${changes.join(', ')}. Reason: ${reason}`, quantity ?? line.quantity, {
    unit: line.unit,
    from: [given(`It was ${line.name}`, line.quantity, line.unit), line.why],
    source: 'changed by hand',
  })
}
