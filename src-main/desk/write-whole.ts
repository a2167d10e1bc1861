import { randomUUID } from 'node:crypto'
import { open, rename, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'

/** Writes a file that is there whole or not at all: beside its place first, then put there by its name. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const beside = join(dirname(path), `.tailpiece-${randomUUID()}.tmp`)
  try {
    const file = await open(beside, 'wx')
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(beside, path)
  } catch (error) {
    await rm(beside, { force: true })
    throw error
  }
}

/** Whether a file begins with these bytes. */
export async function startsWith(path: string, first: Buffer): Promise<boolean> {
  const file = await open(path, 'r')
  try {
    const { buffer } = await file.read({ buffer: Buffer.alloc(first.length), position: 0 })
    return buffer.equals(first)
  } finally {
    await file.close()
  }
}
