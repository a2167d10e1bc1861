/** What may come next while a JSON text is read. */
type Next = 'value' | 'valueOrEnd' | 'name' | 'nameOrEnd' | 'colon' | 'commaOrEnd' | 'nothing'

export type JsonFault = {
  readonly line: number
  readonly column: number
  /** What should have stood there. */
  readonly wanted: string
  /** What stands there instead. */
  readonly found: string
}

/** Finds where a text stops being JSON; null when it is JSON to its end. */
export function jsonFault(text: string): JsonFault | null {
  const open: ('{' | '[')[] = []
  let next: Next = 'value'
  let at = 0
  for (;;) {
    at = afterSpace(text, at)
    if (at >= text.length && next === 'nothing') return null
    const step = stepFrom(text, at, next)
    if (step.kind === 'fault') return faultAt(text, step.at ?? at, wantedIn(next, open))
    if (step.kind === 'open') open.push(step.bracket)
    if (step.kind === 'close') {
      if (open.at(-1) !== step.bracket) return faultAt(text, at, wantedIn(next, open))
      open.pop()
    }
    at = step.after
    next = step.kind === 'close' || step.kind === 'value' ? afterValue(open) : nextAfter(step, open)
  }
}

type Step =
  | { readonly kind: 'fault'; readonly at?: number }
  | { readonly kind: 'open' | 'close'; readonly bracket: '{' | '['; readonly after: number }
  | { readonly kind: 'value' | 'name' | 'colon' | 'comma'; readonly after: number }

function stepFrom(text: string, at: number, next: Next): Step {
  const sign = text[at]
  const mayEnd = next === 'valueOrEnd' || next === 'nameOrEnd' || next === 'commaOrEnd'
  if (mayEnd && (sign === '}' || sign === ']')) {
    return { kind: 'close', bracket: sign === '}' ? '{' : '[', after: at + 1 }
  }
  if (next === 'colon') return sign === ':' ? { kind: 'colon', after: at + 1 } : { kind: 'fault' }
  if (next === 'commaOrEnd') return sign === ',' ? { kind: 'comma', after: at + 1 } : { kind: 'fault' }
  if (next === 'nothing') return { kind: 'fault' }
  const isName = next === 'name' || next === 'nameOrEnd'
  if (sign === '"') return textFrom(text, at, isName ? 'name' : 'value')
  if (isName) return { kind: 'fault' }
  if (sign === '{' || sign === '[') return { kind: 'open', bracket: sign, after: at + 1 }
  return plainValueFrom(text, at)
}

function textFrom(text: string, start: number, kind: 'name' | 'value'): Step {
  for (let at = start + 1; at < text.length; at += 1) {
    if (text[at] === '"') return { kind, after: at + 1 }
    if (text.charCodeAt(at) < 0x20) return { kind: 'fault', at }
    if (text[at] !== '\\') continue
    const escape = /^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(text.slice(at + 1, at + 6))
    if (escape === null) return { kind: 'fault', at }
    at += escape[0].length
  }
  return { kind: 'fault', at: text.length }
}

function plainValueFrom(text: string, at: number): Step {
  const plain = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.])/y
  plain.lastIndex = at
  return plain.test(text) ? { kind: 'value', after: plain.lastIndex } : { kind: 'fault' }
}

function nextAfter(step: Step, open: readonly ('{' | '[')[]): Next {
  const inObject = open.at(-1) === '{'
  if (step.kind === 'open') return inObject ? 'nameOrEnd' : 'valueOrEnd'
  if (step.kind === 'name') return 'colon'
  if (step.kind === 'comma') return inObject ? 'name' : 'value'
  return 'value'
}

const afterValue = (open: readonly unknown[]): Next => (open.length === 0 ? 'nothing' : 'commaOrEnd')

function wantedIn(next: Next, open: readonly ('{' | '[')[]): string {
  const closing = open.at(-1) === '{' ? '}' : ']'
  const words: Readonly<Record<Next, string>> = {
    value: 'a value',
    valueOrEnd: 'a value or ]',
    name: 'a name in double quotes',
    nameOrEnd: 'a name in double quotes or }',
    colon: 'a colon',
    commaOrEnd: `a comma or ${closing}`,
    nothing: 'the end of the text',
  }
  return words[next]
}

function afterSpace(text: string, from: number): number {
  const space = /[ \t\r\n]*/y
  space.lastIndex = from
  space.test(text)
  return space.lastIndex
}

function faultAt(text: string, at: number, wanted: string): JsonFault {
  const before = text.slice(0, at).split(/\r\n|\r|\n/)
  const found = /^(?:-?\w{1,20}|[^\s])/.exec(text.slice(at, at + 21))
  return {
    line: before.length,
    column: (before.at(-1)?.length ?? 0) + 1,
    wanted,
    found: at >= text.length ? 'the end of the text' : (found?.[0] ?? 'a line break'),
  }
}
