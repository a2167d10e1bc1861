import type { ReadTx } from '../tables.ts'

/**
 * The supplier's last file if it was read in this way and nothing was done to prices of the supplier since then; null otherwise. The
 * same file again would then change nothing.
 */
export async function sameFileTaken(
  tx: ReadTx,
  supplierId: string,
  fileKey: string,
): Promise<{ readonly fileHash: string; readonly counts: string } | null> {
  const last = await tx
    .selectFrom('price_change')
    .select(['kind', 'file_hash', 'file_key', 'counts'])
    .where('undone_at', 'is', null)
    .where((eb) => eb.or([eb('supplier_id', '=', supplierId), eb('supplier_id', 'is', null)]))
    .orderBy('change_no', 'desc')
    .limit(1)
    .executeTakeFirst()
  if (last === undefined || last.kind !== 'file' || last.file_hash === null) return null
  return last.file_key === fileKey ? { fileHash: last.file_hash, counts: last.counts } : null
}
