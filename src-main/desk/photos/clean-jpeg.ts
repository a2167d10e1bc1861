import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

export type JpegSize = { readonly widthPx: number; readonly heightPx: number }

const path = 'base64'
const startOfImage = 0xd8
const endOfImage = 0xd9
const startOfScan = 0xda

/** Frame headers, which hold the size: every SOF but the three numbers that mean something else. */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)

/**
 * The size of a JPEG that says nothing but its picture. Its segments are walked from end to end: what a camera writes beside the
 * picture (where, when, by whom, small copies, a film after the end) is refused by name, and so is a file that is no whole JPEG.
 * Source: ITU-T T.81 annex B (markers), JFIF 1.02 (APP0); Exif and XMP lie in APP1, IPTC in APP13.
 */
export function cleanJpeg(bytes: Uint8Array): Outcome<JpegSize> {
  if (bytes[0] !== 0xff || bytes[1] !== startOfImage) return notWhole('it does not begin as a JPEG does')
  let size: JpegSize | null = null
  let at = 2
  for (;;) {
    const marker = markerAt(bytes, at)
    if (marker === null) return notWhole('it breaks off, or a part of it is damaged')
    if (marker === endOfImage) return ended(bytes, at + 2, size)
    const length = lengthAt(bytes, at + 2)
    if (length === null) return notWhole('it breaks off, or a part of it is damaged')
    const body = bytes.subarray(at + 4, at + 2 + length)
    const told = toldBy(marker, body)
    if (told !== null) return tells(told)
    if (isFrame(marker)) size = sizeIn(body)
    at += 2 + length
    if (marker === startOfScan) at = afterScan(bytes, at)
  }
}

function ended(bytes: Uint8Array, end: number, size: JpegSize | null): Outcome<JpegSize> {
  if (end !== bytes.length) return tells('something more after the picture’s end')
  if (size === null || size.widthPx === 0 || size.heightPx === 0) return notWhole('it has no size')
  return accept(size)
}

/** What a segment says beside the picture; null where it belongs to the picture itself. */
function toldBy(marker: number, body: Uint8Array): string | null {
  const name = nameOf(body)
  if (marker === 0xfe) return 'a comment'
  if (marker === 0xe1)
    return name.startsWith('Exif') ? 'camera data (EXIF), which may hold the place' : 'camera data (XMP)'
  if (marker === 0xed) return 'press data (IPTC)'
  if (marker === 0xe0) return plainJfif(name, body) ? null : 'a small copy of the picture'
  if (marker === 0xe2) return name.startsWith('ICC_PROFILE') ? null : 'a second picture'
  if (marker === 0xee) return name.startsWith('Adobe') ? null : 'data of a program'
  return marker >= 0xe0 && marker <= 0xef ? 'data of a program' : null
}

/** The header of JFIF with no small picture in it: 14 bytes. */
function plainJfif(name: string, body: Uint8Array): boolean {
  return name.startsWith('JFIF') && body.length === 14
}

function nameOf(body: Uint8Array): string {
  return String.fromCharCode(...body.subarray(0, 12))
}

/** Marker bytes may have any number of 0xff before them, which no program of ours writes: one is wanted here. */
function markerAt(bytes: Uint8Array, at: number): number | null {
  const marker = bytes[at + 1]
  return bytes[at] === 0xff && marker !== undefined && marker !== 0xff && marker !== 0 ? marker : null
}

function lengthAt(bytes: Uint8Array, at: number): number | null {
  const [high, low] = [bytes[at], bytes[at + 1]]
  if (high === undefined || low === undefined) return null
  const length = high * 256 + low
  return length >= 2 && at + length <= bytes.length ? length : null
}

function sizeIn(body: Uint8Array): JpegSize {
  const two = (at: number) => (body[at] ?? 0) * 256 + (body[at + 1] ?? 0)
  return { heightPx: two(1), widthPx: two(3) }
}

/** Past the coded picture: to the next marker that is neither a stuffed 0xff nor a restart. */
function afterScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue
    const next = bytes[at + 1]
    if (next === undefined) break
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at
  }
  return bytes.length
}

function notWhole(because: string): Outcome<never> {
  return refuse('invalid', `The photo is not a whole JPEG: ${because}.`, path, 'Choose the photo again.')
}

function tells(what: string): Outcome<never> {
  return refuse(
    'refused',
    `The photo still holds ${what}; only the picture itself is kept.`,
    path,
    'Add it in the window, which leaves all of that out.',
  )
}
