import { mkdir, stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Desk } from '../desk.ts'
import { startsWith, writeWhole } from '../write-whole.ts'
import { ioRefusal } from './io-sentence.ts'

/** A file for another program: what it holds, what kind it is and where it goes. */
export type OpenFile = {
  readonly bytes: Uint8Array
  readonly form: 'csv' | 'xlsx' | 'xml' | 'eml' | 'json'
  /** Where the person wants it, if anybody said. */
  readonly out: string | undefined
  /** The file's name in the papers folder, without its ending. */
  readonly name: string
}

export type FileWritten = { readonly path: string; readonly bytes: number }

/** Puts a file for another program where it belongs, whole or not at all. Nobody's other file is written over. */
export async function writeFile(file: OpenFile, desk: Desk): Promise<Outcome<FileWritten>> {
  const place = filePath(file, desk)
  if (!place.ok) return place
  const path = place.value
  const field = file.out === undefined ? undefined : 'out'
  try {
    if (field === undefined) await mkdir(desk.papersFolder, { recursive: true })
    const stands = await mayStandAt(path, file, field)
    if (!stands.ok) return stands
    await writeWhole(path, file.bytes)
  } catch (error) {
    return ioRefusal(error, path, field)
  }
  return accept({ path, bytes: file.bytes.length })
}

/** The file it goes to; refused where a path was named at a door that lets nobody name one. */
export function filePath(
  { out, name, form }: Pick<OpenFile, 'out' | 'name' | 'form'>,
  desk: Desk,
): Outcome<string> {
  if (out === undefined) {
    const safe = name.replace(/[^A-Za-z0-9._-]+/g, '-').slice(0, 120)
    return accept(join(desk.papersFolder, `${safe}.${form}`))
  }
  if (!desk.mayChoosePath) {
    const message = 'Only the terminal may say where a file goes; here it goes to the papers folder.'
    return refuse('refused', message, 'out', 'Leave `out` out.')
  }
  if (out.includes('\0')) return refuse('invalid', 'A file’s path holds no null character.', 'out')
  return accept(resolve(out))
}

/**
 * So many bytes of a file’s beginning tell that one of its kind stood there: a workbook’s wrapping, a table’s first headings, an
 * XML document’s own name with its namespace, a draft’s mark.
 */
const headBytes: Readonly<Record<OpenFile['form'], number>> = {
  csv: 40,
  xlsx: 4,
  xml: 100,
  eml: 11,
  json: 40,
}

/** Free, or taken by an older file that begins as this one does: nobody's other file is written over. */
async function mayStandAt(
  path: string,
  { bytes, form }: OpenFile,
  field: string | undefined,
): Promise<Outcome<true>> {
  const found = await stat(path).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  })
  if (found === null) return accept(true)
  if (found.isDirectory()) {
    const message = `${path} is a folder, so no file can stand there.`
    return refuse('io', message, field, 'Put a file name after the folder.')
  }
  const head = Buffer.from(bytes.subarray(0, headBytes[form]))
  if (found.isFile() && (found.size === 0 || (await startsWith(path, head)))) return accept(true)
  const message = `${path} is already there and is no ${form.toUpperCase()} file of this kind, so it was left as it is.`
  return refuse('conflict', message, field, 'Name another file, or take that one away.')
}
