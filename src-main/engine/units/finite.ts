import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

/**
 * A refusal that names the first number in an input that is not finite; null when all are.
 * @param input the input of a rule: plain data
 * @source practice, no published source
 * @example refuseUnlessFinite({ flowC: 1 / 0 }).problems[0].path // => 'flowC'
 */
export function refuseUnlessFinite(input: unknown): Outcome<never> | null {
  const path = pathOfNonFinite(input)
  if (path === null) return null
  return refuse('invalid', 'Every figure must be a number; this one is missing or endless.', path)
}

/**
 * An answer, unless a figure in it went past what can be reckoned; then a refusal that says so.
 * @param answer a rule's answer: plain data
 * @param sentence what to say when a figure is not finite
 * @source practice, no published source
 * @example acceptFinite({ watts: 0 / 0 }, 'Too small.').problems[0].message // => 'Too small.'
 */
export function acceptFinite<T>(answer: T, sentence: string): Outcome<T> {
  return pathOfNonFinite(answer) === null ? accept(answer) : refuse('impossible', sentence)
}

/** The path of the first figure that is not finite; written only where there is one, because rules ask often. */
function pathOfNonFinite(value: unknown): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : ''
  if (typeof value !== 'object' || value === null) return null
  for (const key in value) {
    const below = pathOfNonFinite((value as Readonly<Record<string, unknown>>)[key])
    if (below !== null) return joined(Array.isArray(value) ? `[${key}]` : key, below)
  }
  return null
}

function joined(step: string, below: string): string {
  return below === '' || below.startsWith('[') ? step + below : `${step}.${below}`
}
