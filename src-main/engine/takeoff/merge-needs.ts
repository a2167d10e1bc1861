import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { specKey } from './match-spec.ts'
import type { JobNeed } from './gather-needs.ts'

/** Needs of the same thing put together: one line of the parts list before it is looked up. */
export type MergedNeed = JobNeed & { readonly lineKey: string }

/**
 * Puts needs of the same kind and spec together, so that nothing is listed twice. The order of the needs does not matter.
 * @param needs what is still to be bought
 * @source practice, no published source
 * @example mergeNeeds([1, 2].map((quantity) => ({ kind: 'vent', spec: {}, quantity, swapIds: [], why: { says: 'one', value: 1, from: [] } })))[0].quantity // => 3
 */
export function mergeNeeds(needs: readonly JobNeed[]): readonly MergedNeed[] {
  const groups = new Map<string, JobNeed[]>()
  for (const need of needs) {
    const lineKey = `${need.kind} ${specKey(need.spec)}`
    const group = groups.get(lineKey)
    if (group === undefined) groups.set(lineKey, [need])
    else group.push(need)
  }
  return [...groups]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([lineKey, group]) => addedUp(lineKey, group))
}

/**
 * Needs of one thing as one need: quantities, pieces and swaps put together, whatever order they come in.
 * @param lineKey the key of the line that they become
 * @param unsorted at least one need, all in the same unit
 * @source practice, no published source
 * @example addedUp('vent', [1, 2].map((quantity) => ({ quantity, swapIds: ['a'], why: { says: 'one', value: quantity, from: [] } }))).swapIds // => ["a"]
 */
export function addedUp(lineKey: string, unsorted: readonly JobNeed[]): MergedNeed {
  const group = unsorted.toSorted((a, b) => (orderKey(a) < orderKey(b) ? -1 : 1))
  const first = group[0]
  if (first === undefined) throw new Error('A group of needs is empty')
  const quantity = group.reduce((sum, need) => sum + need.quantity, 0)
  const pieces = group.flatMap((need) => need.pieces ?? [])
  return {
    ...first,
    lineKey,
    quantity,
    shared: group.some((need) => need.shared),
    swapIds: [...new Set(group.flatMap((need) => need.swapIds))],
    why: group.length === 1 ? first.why : sumOf(group, quantity),
    ...(pieces.length === 0 ? {} : { pieces }),
  }
}

function orderKey(need: JobNeed): string {
  return `${need.swapIds.join(' ')} ${need.why.says} ${JSON.stringify(need.why.from)}`
}

/** The same sentence with the same figures said n times becomes one: eight holes, not eight lines. */
function sumOf(group: readonly JobNeed[], quantity: number): Derivation {
  const unit = group[0]?.unit ?? 'each'
  return because(`Added up from ${group.length} places.`, quantity, {
    unit,
    from: group.map((need) => need.why),
  })
}
