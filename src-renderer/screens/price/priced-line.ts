import type { Derivation } from '../../../src-main/domain/derivation.ts'
import type { Override } from '../../../src-main/domain/job.ts'
import type { QuoteLine } from '../../../src-main/domain/quote.ts'

/** The name by which a line is changed: a part by its line in the parts list, all else by its id. */
export function changeKeyOf({ part, lineId }: Pick<QuoteLine, 'part' | 'lineId'>): string {
  return part?.lineKey ?? lineId
}

export function overrideOf(
  line: Pick<QuoteLine, 'part' | 'lineId'>,
  overrides: readonly Override[],
): Override | undefined {
  const lineKey = changeKeyOf(line)
  return overrides.find((one) => one.lineKey === lineKey)
}

/** Discounts and options are changed where they are written. */
export function canBeChanged({ lineId }: Pick<QuoteLine, 'lineId'>): boolean {
  return !lineId.startsWith('discount-') && !lineId.startsWith('option-')
}

/** How many are needed and why: all of a line's reasons that shows neither cost nor mark-up. */
export function whyForCustomer({
  part,
  why,
  was,
}: Pick<QuoteLine, 'part' | 'why' | 'was'>): Derivation | null {
  if (part === undefined) return null
  const worked = was?.netPence === undefined ? why : why.from[1]
  return worked?.from[0] ?? null
}

/** Changes by hand whose line is no longer there. */
export function lostOverrides(
  overrides: readonly Override[],
  lines: readonly Pick<QuoteLine, 'part' | 'lineId'>[],
): readonly Override[] {
  const known = new Set(lines.map(changeKeyOf))
  return overrides.filter(({ lineKey }) => !known.has(lineKey))
}
