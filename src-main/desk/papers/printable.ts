import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { lettersOfFace } from './letters-of-face.ts'
import { faceFile } from './print-pdf.ts'

let lettersOnce: Promise<ReadonlySet<number>> | undefined

/**
 * A view as it can be printed. Signs that only steer how others look are left out; a letter that the typeface does not have
 * is refused by name, because an empty box on a customer's paper says nothing.
 */
export async function printable<T>(view: T): Promise<Outcome<T>> {
  lettersOnce ??= lettersOfEveryFace()
  const letters = await lettersOnce
  const tidied = tidy(view) as T
  const wrong = firstUnprintable(tidied, letters)
  if (wrong === null) return accept(tidied)
  return refuse(
    'impossible',
    `“${wrong.sign}” in “${shortened(wrong.text)}” cannot be printed: the typeface has no such letter.`,
    undefined,
    'Write it in Latin, Greek or Cyrillic letters.',
  )
}

/** What each face that we print in has a glyph for: a name in a heading is as good as one in a sentence. */
async function lettersOfEveryFace(): Promise<ReadonlySet<number>> {
  const [normal, bold] = await Promise.all([
    lettersOfFace(faceFile('normal')),
    lettersOfFace(faceFile('bold')),
  ])
  return new Set([...normal].filter((letter) => bold.has(letter)))
}

/** Composed letters, ordinary line breaks, and no control or variation signs. */
function tidy(value: unknown): unknown {
  if (typeof value === 'string') return tidyText(value)
  if (Array.isArray(value)) return value.map(tidy)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, name === 'base64' ? inner : tidy(inner)]),
  )
}

function tidyText(text: string): string {
  return text
    .toWellFormed()
    .normalize('NFC')
    .replace(/\r\n?/g, '\n')
    .replace(/\t/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\u{fe00}-\u{fe0f}]/gu, (sign) => (sign === '\n' || sign === '\u200b' ? sign : ''))
}

type Wrong = { readonly sign: string; readonly text: string }

function firstUnprintable(value: unknown, letters: ReadonlySet<number>): Wrong | null {
  if (typeof value === 'string') {
    const sign = Array.from(value).find((one) => one !== '\n' && !letters.has(one.codePointAt(0) ?? 0))
    return sign === undefined ? null : { sign, text: value }
  }
  if (typeof value !== 'object' || value === null) return null
  for (const [name, inner] of Object.entries(value)) {
    const wrong = name === 'base64' ? null : firstUnprintable(inner, letters)
    if (wrong !== null) return wrong
  }
  return null
}

function shortened(text: string): string {
  const signs = Array.from(text.replace(/\s+/g, ' '))
  return signs.length > 60 ? `${signs.slice(0, 60).join('')}…` : signs.join('')
}
