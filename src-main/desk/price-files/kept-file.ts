import { readdir, rm, stat } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { PriceSource } from '../../exchange/price-files/read-rows.ts'
import type { Desk } from '../desk.ts'

const keptForMs = 24 * 60 * 60 * 1000
const mostNameLetters = 100

/** A file's name without folders, without signs that mean something to a machine, and never hidden. */
export function plainName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? ''
  const plain = last
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{N} ._()-]/gu, '-')
    .replace(/^[. ]+/, '')
    .slice(-mostNameLetters)
    .replace(/[. ]+$/, '')
  return plain === '' ? 'price list' : plain
}

/** The folder of the files that came through a window. */
export function incomingFolder(desk: Desk): string | null {
  return desk.dataFolder === null ? null : join(desk.dataFolder, 'incoming')
}

/** Removes files that came more than a day ago. */
export async function removeOldFiles(folder: string, nowMs: number): Promise<void> {
  for (const name of await namesIn(folder)) {
    const path = join(folder, name)
    const { mtimeMs } = await stat(path)
    if (nowMs - mtimeMs > keptForMs) await rm(path, { recursive: true, force: true })
  }
}

async function namesIn(folder: string): Promise<readonly string[]> {
  try {
    return await readdir(folder)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return []
    throw error
  }
}

/** Where a file that a request names lies. By its path only where the door lets the person name one. */
export async function sourceOf(
  file: InputOf<'priceFile.look'>['file'],
  desk: Desk,
): Promise<Outcome<PriceSource>> {
  if ('path' in file) {
    if (desk.mayChoosePath) return accept({ path: file.path, name: basename(file.path) })
    return refuse(
      'refused',
      'A file is named by its path at the terminal only: hand it over with file.keep.',
      'file.path',
    )
  }
  const folder = incomingFolder(desk)
  const kept = folder === null ? undefined : (await namesIn(join(folder, file.fileId)))[0]
  if (folder === null || kept === undefined) {
    const says = `There is no file ${file.fileId}: it was never handed over, or more than a day ago.`
    return refuse('not-found', says, 'file.fileId', 'Hand it over again with file.keep.')
  }
  return accept({ path: join(folder, file.fileId, kept), name: kept })
}
