import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { changeCounts } from '../../domain/price-list.ts'
import type { ChangeCounts, FileReading } from '../../domain/price-list.ts'
import type { PriceSource } from '../../exchange/price-files/read-rows.ts'
import { sameFileTaken } from '../../store/price-list/same-file-taken.ts'
import { reading as readingStore } from '../../store/store.ts'
import type { Store } from '../../store/store.ts'
import { fileKeyOf } from './file-key.ts'

type Asked = {
  readonly source: PriceSource
  readonly supplierId: string
  readonly reading: FileReading
  readonly validFrom?: string | undefined
  readonly part?: boolean | undefined
}

/** What a file comes to that was taken before and since when nothing changed; null for any other. */
export async function takenBefore(
  store: Store,
  { source, ...asked }: Asked,
): Promise<{ readonly fileHash: string; readonly counts: ChangeCounts } | null> {
  const last = await readingStore(store, (tx) => sameFileTaken(tx, asked.supplierId, fileKeyOf(asked)))
  if (last === null) return null
  const fileHash = await hashOf(source)
  if (fileHash !== last.fileHash) return null
  const was = changeCounts.parse(JSON.parse(last.counts))
  const unchanged = was.new + was.changed + was.unchanged
  return { fileHash, counts: { ...was, new: 0, changed: 0, missing: 0, unchanged } }
}

/** SHA-256 of the file's bytes; null when it cannot be read, which reading it then says in words. */
async function hashOf({ path }: PriceSource): Promise<string | null> {
  const hash = createHash('sha256')
  try {
    for await (const piece of createReadStream(path, { highWaterMark: 1 << 18 })) hash.update(piece as Buffer)
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null
    throw error
  }
  return hash.digest('hex')
}
