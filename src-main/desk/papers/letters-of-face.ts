import { readFile } from 'node:fs/promises'

/**
 * Every character that a TrueType file has a glyph for, from its character map.
 * Source: OpenType 1.9, `cmap`, formats 4 and 12.
 */
export async function lettersOfFace(file: string): Promise<ReadonlySet<number>> {
  const bytes = await readFile(file)
  const font = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const map = tableAt(font, 'cmap')
  const letters = new Set<number>()
  for (let index = 0; index < font.getUint16(map + 2); index += 1) {
    const start = map + font.getUint32(map + 8 + index * 8)
    const format = font.getUint16(start)
    if (format === 4) addSegments(font, start, letters)
    if (format === 12) addGroups(font, start, letters)
  }
  return letters
}

function tableAt(font: DataView, tag: string): number {
  const count = font.getUint16(4)
  for (let index = 0; index < count; index += 1) {
    const entry = 12 + index * 16
    const name = String.fromCharCode(...[0, 1, 2, 3].map((nth) => font.getUint8(entry + nth)))
    if (name === tag) return font.getUint32(entry + 8)
  }
  throw new Error(`The typeface has no ${tag} table`)
}

/** Format 4: runs of characters, each with a step to its glyph or a place in an array of glyphs; glyph 0 is none. */
function addSegments(font: DataView, start: number, letters: Set<number>): void {
  const doubled = font.getUint16(start + 6)
  const ends = start + 14
  const starts = ends + doubled + 2
  for (let offset = 0; offset < doubled; offset += 2) {
    const delta = font.getUint16(starts + doubled + offset)
    const rangeAt = starts + 2 * doubled + offset
    const range = font.getUint16(rangeAt)
    const first = font.getUint16(starts + offset)
    for (let code = first; code <= font.getUint16(ends + offset) && code < 0xffff; code += 1) {
      const listed = range === 0 ? code : font.getUint16(rangeAt + range + 2 * (code - first))
      if (listed !== 0 && ((listed + delta) & 0xffff) !== 0) letters.add(code)
    }
  }
}

/** Format 12: groups of characters in a row whose glyphs are in a row. */
function addGroups(font: DataView, start: number, letters: Set<number>): void {
  for (let index = 0; index < font.getUint32(start + 12); index += 1) {
    const group = start + 16 + index * 12
    const first = font.getUint32(group)
    const glyph = font.getUint32(group + 8)
    for (let code = first; code <= font.getUint32(group + 4); code += 1) {
      if (glyph + code - first !== 0) letters.add(code)
    }
  }
}
