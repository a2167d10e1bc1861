import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'

export type Asked<F extends string> = {
  /** What stands without a flag before it, in order. */
  readonly words: readonly string[]
  readonly flags: { readonly [flag in F]?: string }
}

/** Reads `--flag value` and `--flag=value`; a flag that nobody knows, given twice or without its value is refused. */
export function readFlags<F extends string>(
  given: readonly string[],
  known: readonly F[],
): Outcome<Asked<F>> {
  const words: string[] = []
  const flags: { [flag in F]?: string } = {}
  for (let at = 0; at < given.length; at += 1) {
    const word = given[at] ?? ''
    const split = /^--([^=]*)(?:=(.*))?$/s.exec(word)
    if (split === null) {
      words.push(word)
      continue
    }
    const flag = known.find((name) => name === split[1])
    if (flag === undefined) return refuse('invalid', unknownFlag(word, known))
    if (flags[flag] !== undefined)
      return refuse('invalid', `The flag --${flag} is given twice; give it once.`)
    const value = split[2] ?? given[(at += 1)]
    if (value === undefined || value === '' || value.startsWith('--')) {
      return refuse('invalid', `The flag --${flag} needs a value after it.`)
    }
    flags[flag] = value
  }
  return accept({ words, flags })
}

function unknownFlag(word: string, known: readonly string[]): string {
  const names = known.map((name) => `--${name}`)
  const flags = names.length === 1 ? `the only flag is ${names[0]}` : `the flags are ${names.join(' and ')}`
  return `There is no flag ${word}; ${flags}.`
}
