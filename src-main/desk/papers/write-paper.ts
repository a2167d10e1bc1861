import { mkdir, stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import type { Desk } from '../desk.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { ioRefusal } from './io-sentence.ts'
import type { Printed } from './print-pdf.ts'
import { startsWith, writeWhole } from '../write-whole.ts'

export type Paper = { readonly path: string; readonly pages: number; readonly bytes: number }

export type Where = {
  /** Where the person wants it, if anybody said. */
  readonly out: string | undefined
  /** The file's name in the papers folder, without `.pdf`. */
  readonly name: string
}

/** The file a paper goes to; refused where a path was named at a door that lets nobody name one. */
export function paperPath({ out, name }: Where, desk: Desk): Outcome<string> {
  if (out === undefined) return accept(join(desk.papersFolder, `${safeName(name)}.pdf`))
  if (!desk.mayChoosePath) {
    return refuse(
      'refused',
      'Only the terminal may say where a document goes; here it goes to the papers folder.',
      'out',
      'Leave `out` out.',
    )
  }
  if (out.includes('\0')) return refuse('invalid', 'A file’s path holds no null character.', 'out')
  return accept(resolve(out))
}

/** Letters, digits, dots and dashes only, and no longer than any disk takes. */
function safeName(name: string): string {
  return name.replace(/[^A-Za-z0-9._-]+/g, '-').slice(0, 120)
}

/** Puts a paper where it belongs, whole or not at all: it is written beside its place and then moved into it. */
export async function writePaper(printed: Printed, where: Where, desk: Desk): Promise<Outcome<Paper>> {
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const path = place.value
  const field = where.out === undefined ? undefined : 'out'
  try {
    if (field === undefined) await mkdir(desk.papersFolder, { recursive: true })
    const stands = await mayStandAt(path, field)
    if (!stands.ok) return stands
    await writeWhole(path, printed.bytes)
  } catch (error) {
    return ioRefusal(error, path, field)
  }
  return accept({ path, pages: printed.pages, bytes: printed.bytes.length })
}

/** Free, or taken by an older PDF: nobody's other file is written over. */
async function mayStandAt(path: string, field: string | undefined): Promise<Outcome<true>> {
  const found = await stat(path).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  })
  if (found === null) return accept(true)
  if (found.isDirectory()) {
    const message = `${path} is a folder, so no file can stand there.`
    return refuse('io', message, field, 'Put a file name after the folder.')
  }
  if (found.isFile() && (found.size === 0 || (await startsWith(path, Buffer.from('%PDF-')))))
    return accept(true)
  const message = `${path} is already there and is not a PDF, so it was left as it is.`
  return refuse('conflict', message, field, 'Name another file.')
}
