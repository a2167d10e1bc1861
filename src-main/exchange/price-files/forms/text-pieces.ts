import { createHash } from 'node:crypto'
import type { Outcome } from '../../../domain/outcome.ts'
import { refuse } from '../../../domain/outcome.ts'
import { encodingInWords, markedEncoding, wideEncoding } from './text-encoding.ts'
import type { Encoding } from './text-encoding.ts'
import type { OpenFile } from './open-file.ts'

/** Characters go through the table reader in pieces of about this many bytes. */
const chunkBytes = 256 * 1024

export type Pieces = {
  readonly texts: AsyncGenerator<string, void>
  /** Why the pieces ended before the file did, if they did. */
  readonly wrong: () => Outcome<never> | undefined
  /** Of the bytes handed on: of the whole file once the pieces have ended. */
  readonly hash: () => string
}

/** A text file's characters piece by piece, every line end as one line feed. Ends early when they are not text. */
export function textPieces(
  file: OpenFile,
  encoding: Encoding,
  onPart: (doneRatio: number) => boolean,
): Pieces {
  const hash = createHash('sha256')
  let wrong: Outcome<never> | undefined
  const told = (problem: Outcome<never> | undefined) => {
    wrong = problem
  }
  async function* texts(): AsyncGenerator<string, void> {
    const begun = otherEncoding(file, encoding)
    if (begun !== undefined) return told(begun)
    const decode = decoderOf(encoding)
    const looksUtf8 = utf8Watch(encoding)
    let at = 0
    let held = ''
    while (at < file.bytes) {
      const chunk = Buffer.allocUnsafe(Math.min(chunkBytes, file.bytes - at))
      const { bytesRead } = await file.handle.read(chunk, 0, chunk.length, at)
      if (bytesRead === 0) break
      const bytes = chunk.subarray(0, bytesRead)
      at += bytesRead
      hash.update(bytes)
      looksUtf8.see(bytes)
      const text = decode(bytes, at >= file.bytes)
      if (text === null) return told(wrongBytes(file.name, encoding, at - bytesRead))
      if (text.includes('\0')) return told(noughts(file.name))
      const joined = held + text
      held = joined.endsWith('\r') && at < file.bytes ? '\r' : ''
      if (!onPart(at / file.bytes)) return
      yield lineFeeds(held === '' ? joined : joined.slice(0, -1))
    }
    if (looksUtf8.sure()) told(isReallyUtf8(file.name))
  }
  return { texts: texts(), wrong: () => wrong, hash: () => hash.copy().digest('hex') }
}

const lineFeeds = (text: string) => (text.includes('\r') ? text.replaceAll(/\r\n?/g, '\n') : text)

function decoderOf(encoding: Encoding): (bytes: Buffer, last: boolean) => string | null {
  const decoder = new TextDecoder(encoding, { fatal: encoding !== 'windows-1252' })
  return (bytes, last) => {
    try {
      return decoder.decode(bytes, { stream: !last })
    } catch (error) {
      if (error instanceof TypeError) return null
      throw error
    }
  }
}

/** Watches a file that is to be read as Windows-1252 for being UTF-8 after all. */
function utf8Watch(encoding: Encoding) {
  const decode = decoderOf('utf-8')
  let still = encoding === 'windows-1252'
  let beyondAscii = false
  return {
    see(bytes: Buffer): void {
      if (!still) return
      const text = decode(bytes, false)
      still = text !== null
      beyondAscii ||= text !== null && text.length < bytes.length
    },
    sure: () => still && beyondAscii,
  }
}

/** A mark or a pattern at the file's beginning that speaks against the encoding it is to be read in. */
function otherEncoding({ head, name }: OpenFile, encoding: Encoding): Outcome<never> | undefined {
  const seen = markedEncoding(head) ?? wideEncoding(head)
  const isWide = encoding === 'utf-16le' || encoding === 'utf-16be'
  const other = seen ?? (isWide && !head.includes(0) ? 'utf-8' : encoding)
  return other === encoding ? undefined : wrongEncoding(name, encoding, encodingInWords[other])
}

function wrongEncoding(name: string, encoding: Encoding, rather: string): Outcome<never> {
  return refuse(
    'invalid',
    `"${name}" was to be read as ${encodingInWords[encoding]}, but it is ${rather}: choose that encoding.`,
    'reading.encoding',
  )
}

function wrongBytes(name: string, encoding: Encoding, from: number): Outcome<never> {
  const rather = encoding === 'utf-8' ? encodingInWords['windows-1252'] : 'another one'
  return refuse(
    'invalid',
    `"${name}" is not ${encodingInWords[encoding]}: after byte ${from} it has bytes that are no character. ` +
      `The encoding is probably ${rather}.`,
    'reading.encoding',
  )
}

function noughts(name: string): Outcome<never> {
  return refuse('invalid', `"${name}" has zero bytes among its text: it is damaged, or no text file at all.`)
}

const isReallyUtf8 = (name: string) => wrongEncoding(name, 'windows-1252', encodingInWords['utf-8'])
