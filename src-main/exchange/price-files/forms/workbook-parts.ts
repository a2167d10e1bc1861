import { Buffer } from 'node:buffer'
import type { Entry, ZipFile } from 'yauzl'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'
import { inMb } from './open-file.ts'

/** A workbook's parts that hold values, unpacked, by their names. */
export type WorkbookParts = ReadonlyMap<string, Buffer>

/** Values, and what names and forms them. Macros, pictures, links to other books and all else are never unpacked. */
const wanted =
  /^(?:\[Content_Types\]\.xml|xl\/workbook\.xml|xl\/_rels\/workbook\.xml\.rels|xl\/sharedStrings\.xml|xl\/styles\.xml|xl\/worksheets\/[^/]+\.xml)$/

/**
 * Unpacks what is wanted of a workbook, counting every byte that really comes out (a list of contents may lie), and
 * refuses a zip that is no workbook, is locked, or swells past the limit.
 */
export async function workbookParts(whole: Buffer, name: string): Promise<Outcome<WorkbookParts>> {
  const { fromBufferPromise } = await import('yauzl')
  let zip: ZipFile
  try {
    zip = await fromBufferPromise(whole, { lazyEntries: true, validateEntrySizes: true })
  } catch (error) {
    return damaged(name, error)
  }
  try {
    return await unpacked(zip, name)
  } catch (error) {
    return damaged(name, error)
  } finally {
    zip.close()
  }
}

/** What the unpacker throws is about the file; our own mistakes are of other kinds and go on. */
function damaged(name: string, error: unknown): Outcome<never> {
  if (!(error instanceof Error) || error instanceof TypeError || error instanceof ReferenceError) throw error
  return refuse(
    'invalid',
    `"${name}" is a damaged workbook: it cannot be unpacked. Open it, save it again as .xlsx and try that.`,
  )
}

async function unpacked(zip: ZipFile, name: string): Promise<Outcome<WorkbookParts>> {
  const entries: Entry[] = []
  let declared = 0
  for await (const entry of zip.eachEntry()) {
    entries.push(entry)
    declared += entry.uncompressedSize
    if (entries.length > priceFileLimits.workbookParts) return tooMany(name)
    if (declared > priceFileLimits.unpackedBytes) return swollen(name)
  }
  const wrong = wrongKind(entries, name)
  if (!wrong.ok) return wrong
  const parts = new Map<string, Buffer>()
  let total = 0
  for (const entry of entries.filter(({ fileName }) => wanted.test(fileName))) {
    const chunks: Buffer[] = []
    for await (const chunk of await zip.openReadStreamPromise(entry)) {
      const bytes = chunk as Buffer
      total += bytes.length
      if (total > priceFileLimits.unpackedBytes) return swollen(name)
      chunks.push(bytes)
    }
    parts.set(entry.fileName, Buffer.concat(chunks))
  }
  return accept(parts)
}

function wrongKind(entries: readonly Entry[], name: string): Outcome<null> {
  const has = (part: string) => entries.some(({ fileName }) => fileName === part)
  if (entries.some((entry) => entry.isEncrypted()))
    return refuse('invalid', `"${name}" is locked with a password: save it without one.`)
  if (has('xl/workbook.bin'))
    return refuse('invalid', `"${name}" is a binary workbook (.xlsb): save it as .xlsx or CSV.`)
  if (has('xl/workbook.xml') && has('xl/_rels/workbook.xml.rels')) return accept(null)
  const kind = has('word/document.xml')
    ? 'a text document'
    : has('content.xml')
      ? 'an OpenDocument file'
      : 'a zip of other files'
  return refuse(
    'invalid',
    `"${name}" is ${kind}, whatever its name says, and no .xlsx workbook: send the price list as .xlsx or CSV.`,
  )
}

function swollen(name: string): Outcome<never> {
  const most = inMb(priceFileLimits.unpackedBytes)
  return refuse(
    'refused',
    `"${name}" swells to more than ${most} when it is unpacked; no price list does. It was not opened.`,
  )
}

function tooMany(name: string): Outcome<never> {
  return refuse(
    'refused',
    `"${name}" has more than ${priceFileLimits.workbookParts} parts; no price list has. It was not opened.`,
  )
}
