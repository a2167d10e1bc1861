type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json | undefined }
type Room = { readonly indent: number; readonly before: number; readonly after: number }

const lineWidth = 110

/** JSON laid out as the formatter of this code lays it out, so that formatting a made file changes nothing. */
export function jsonText(value: object): string {
  const plain: Json = JSON.parse(JSON.stringify(value))
  return `${laidOut(plain, { indent: 0, before: 0, after: 0 }, true)}\n`
}

/** `before` and `after` are what stands on the same line: the name in front and the comma behind. */
function laidOut(value: Json, room: Room, open = false): string {
  const flat = onOneLine(value)
  if (!open && flat !== null && room.indent + room.before + flat.length + room.after <= lineWidth) return flat
  if (Array.isArray(value)) {
    return inBlock(
      value.map((inner) => ['', inner]),
      room.indent,
      ['[', ']'],
    )
  }
  if (typeof value === 'object' && value !== null) {
    return inBlock(
      entriesOf(value).map(([name, inner]) => [`${JSON.stringify(name)}: `, inner]),
      room.indent,
      ['{', '}'],
    )
  }
  return JSON.stringify(value)
}

function inBlock(
  parts: readonly (readonly [string, Json])[],
  indent: number,
  [first, last]: readonly [string, string],
): string {
  const deeper = indent + 2
  const lines = parts.map(([name, inner], at) => {
    const comma = at < parts.length - 1 ? ',' : ''
    const text = laidOut(inner, { indent: deeper, before: name.length, after: comma.length })
    return `${' '.repeat(deeper)}${name}${text}${comma}`
  })
  return [first, ...lines, `${' '.repeat(indent)}${last}`].join('\n')
}

/** The value on one line; null for what holds a list of several things that have several fields each. */
function onOneLine(value: Json): string | null {
  if (Array.isArray(value)) {
    if (value.length > 1 && value.every(hasSeveral)) return null
    const inner = value.map(onOneLine)
    return inner.includes(null) ? null : `[${inner.join(', ')}]`
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const inner = entriesOf(value).map(([name, one]) => {
    const text = onOneLine(one)
    return text === null ? null : `${JSON.stringify(name)}: ${text}`
  })
  if (inner.includes(null)) return null
  return inner.length === 0 ? '{}' : `{ ${inner.join(', ')} }`
}

function hasSeveral(value: Json): boolean {
  if (Array.isArray(value)) return value.length > 1
  return typeof value === 'object' && value !== null && Object.keys(value).length > 1
}

function entriesOf(value: object): readonly (readonly [string, Json])[] {
  return Object.entries(value)
}
