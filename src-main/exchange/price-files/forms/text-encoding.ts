import { isUtf8 } from 'node:buffer'
import type { FileReading } from '../../../domain/price-list.ts'
import type { OpenFile } from './open-file.ts'

export type Encoding = NonNullable<FileReading['encoding']>

const chunkBytes = 1024 * 1024

/**
 * The encoding of a text file: its byte-order mark, else UTF-8 when every byte of it is UTF-8 and none is nought, else
 * UTF-16 when noughts stand in one half of the byte pairs, else Windows-1252, in which every byte is a letter.
 */
export async function encodingOf(file: OpenFile): Promise<Encoding> {
  const marked = markedEncoding(file.head)
  if (marked !== null) return marked
  const wide = wideEncoding(file.head)
  if (wide !== null) return wide
  return (await isAllUtf8(file)) ? 'utf-8' : 'windows-1252'
}

export function markedEncoding(head: Buffer): Encoding | null {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return 'utf-8'
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le'
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be'
  return null
}

/** UTF-16 without a mark: of plain letters, one byte of each pair is nought. */
export function wideEncoding(head: Buffer): 'utf-16le' | 'utf-16be' | null {
  const pairs = Math.floor(head.length / 2)
  let first = 0
  let second = 0
  for (let at = 0; at < pairs * 2; at += 2) {
    if (head[at] === 0) first += 1
    if (head[at + 1] === 0) second += 1
  }
  if (pairs === 0) return null
  if (second / pairs > 0.4 && first / pairs < 0.05) return 'utf-16le'
  return first / pairs > 0.4 && second / pairs < 0.05 ? 'utf-16be' : null
}

async function isAllUtf8({ handle, bytes }: OpenFile): Promise<boolean> {
  const chunk = Buffer.alloc(chunkBytes)
  let at = 0
  while (at < bytes) {
    const { bytesRead } = await handle.read(chunk, 0, chunkBytes, at)
    if (bytesRead === 0) return true
    // Up to the last whole character, unless this is the end.
    const upTo = at + bytesRead >= bytes ? bytesRead : bytesRead - brokenTail(chunk, bytesRead)
    if (upTo === 0 || !isUtf8(chunk.subarray(0, upTo))) return false
    at += upTo
  }
  return true
}

/** How many bytes at the end begin a character that is not all there. */
function brokenTail(chunk: Buffer, length: number): number {
  for (let back = 1; back <= Math.min(4, length); back += 1) {
    const byte = chunk[length - back] ?? 0
    if (byte < 0x80) return 0
    if (byte >= 0xc0) return back < bytesOf(byte) ? back : 0
  }
  return 0
}

const bytesOf = (lead: number) => (lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2)

export const encodingInWords: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'windows-1252': 'Windows-1252 (Western European)',
  'utf-16le': 'UTF-16, low byte first',
  'utf-16be': 'UTF-16, high byte first',
}
