import type { FormField } from './form-view.ts'

/** A box with its question; what is not known leaves it empty. */
export function box(label: string, value?: string | number | null): FormField {
  return { kind: 'box', label, value: written(value) }
}

/** A box across the page. */
export function wideBox(label: string, value?: string | number | null): FormField {
  return { kind: 'box', label, value: written(value), wide: true }
}

/** Room for several lines. */
export function lines(label: string, value: string | undefined, count: number): FormField {
  return { kind: 'lines', label, value: value ?? '', lines: count }
}

/** Squares to tick, one of which may be ticked already. */
export function ticks(
  label: string,
  words: Readonly<Record<string, string>>,
  chosen?: string | number,
): FormField {
  const ticked = chosen === undefined ? null : String(chosen)
  const choices = Object.entries(words).map(([value, says]) => ({ says, ticked: value === ticked }))
  return { kind: 'ticks', label, choices }
}

/** Yes or no. */
export function yesNo(label: string, value?: boolean): FormField {
  return ticks(label, { yes: 'Yes', no: 'No' }, value === undefined ? undefined : value ? 'yes' : 'no')
}

function written(value: string | number | null | undefined): string {
  return value === undefined || value === null ? '' : String(value)
}
