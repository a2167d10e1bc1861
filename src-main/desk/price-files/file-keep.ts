import { randomUUID } from 'node:crypto'
import { mkdir, open, readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { accept, refuse } from '../../domain/outcome.ts'
import { priceFileLimits } from '../../exchange/price-files/limits.ts'
import type { UseCase } from '../desk.ts'
import { incomingFolder, plainName, removeOldFiles } from './kept-file.ts'

const base64Text = /^[A-Za-z0-9+/]*={0,2}$/

/** Pieces follow one another: each begins where the one before it ended. */
export const fileKeep: UseCase<'file.keep'> = async (input, desk) => {
  const folder = incomingFolder(desk)
  if (folder === null) throw new Error('This request needs a data folder, and none is open')
  if (input.base64.length % 4 !== 0 || !base64Text.test(input.base64))
    return refuse(
      'invalid',
      'The piece is not written in base64: letters, figures, + and / in fours.',
      'base64',
    )
  const piece = Buffer.from(input.base64, 'base64')
  if (input.offset + piece.length > priceFileLimits.textBytes)
    return refuse('refused', 'The file is larger than 512 MB, which no price list is.', 'base64')
  if (input.fileId === undefined) await removeOldFiles(folder, Date.parse(desk.now()))
  const fileId = input.fileId ?? randomUUID()
  const own = join(folder, fileId)
  await mkdir(own, { recursive: true })
  const [first = plainName(input.name)] = await readdir(own)
  const handle = await open(join(own, first), 'a')
  try {
    const { size } = await handle.stat()
    if (size !== input.offset) {
      const says = `The file has ${size} bytes so far, so the next piece begins at ${size}, not ${input.offset}.`
      return refuse('conflict', says, 'offset')
    }
    await handle.write(piece)
    return accept({ fileId, bytes: size + piece.length })
  } finally {
    await handle.close()
  }
}
