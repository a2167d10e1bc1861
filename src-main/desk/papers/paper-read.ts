import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { accept, refuse } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { ioRefusal } from './io-sentence.ts'

/** A document made before. Its name has no folder in it, so nothing outside the papers folder is reached. */
export const paperRead: UseCase<'paper.read'> = async ({ name }, desk) => {
  const path = join(desk.papersFolder, name)
  try {
    const bytes = await readFile(path)
    return accept({ name, base64: bytes.toString('base64') })
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') {
      return refuse('not-found', `There is no document called ${name} in the papers folder.`, 'name')
    }
    return ioRefusal(error, path, 'name')
  }
}
