import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import { jsonFault } from './json-fault.ts'

/** No input is longer than this at any door. */
export const mostInputBytes = 20 * 1024 * 1024

export function tooLong<T>(): Outcome<T> {
  return refuse(
    'invalid',
    `The input is longer than ${mostInputBytes / 1024 / 1024} MB; no request needs so much.`,
  )
}

/** JSON out of bytes as people's programs write them: UTF-8, or UTF-16 when its mark stands in front. */
export function readJson(bytes: Uint8Array): Outcome<unknown> {
  const text = decoded(bytes)
  if (text === null) return refuse('invalid', 'The input is not text in UTF-8; save it as UTF-8.')
  try {
    return accept(JSON.parse(text) as unknown)
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    return refuse('invalid', faultInWords(text))
  }
}

function decoded(bytes: Uint8Array): string | null {
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : 'utf-8'
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

function faultInWords(text: string): string {
  if (text.trim() === '') return 'The input is empty; give a JSON object, or {} for nothing.'
  const fault = jsonFault(text)
  if (fault === null) return 'The input is not valid JSON.'
  const { line, column, wanted, found } = fault
  const finite = /^-?(?:NaN|Infinity)$/.test(found) ? ' Numbers must be finite.' : ''
  return `The input is not valid JSON at line ${line}, column ${column}: ${wanted} should stand there, not ${found}.${finite}`
}
