import type { AnswerOf } from '../../contract/requests.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { FileReading } from '../../domain/price-list.ts'
import { lookAtFile } from '../../exchange/price-files/look-at-file.ts'
import type { PriceSource } from '../../exchange/price-files/read-rows.ts'

export type LookTask = {
  readonly kind: 'look'
  readonly source: PriceSource
  /** As the person says; null when it is to be found out. */
  readonly reading: FileReading | null
  /** How this supplier's last file was read; null when there was none. */
  readonly kept: FileReading | null
}

/** How a file would be read: as the person says, else as the supplier's last one if that still fits, else by its look. */
export async function lookAt({
  source,
  reading,
  kept,
}: LookTask): Promise<Outcome<AnswerOf<'priceFile.look'>>> {
  if (kept !== null) {
    const same = await lookAtFile(source, kept)
    if (same.ok && same.value.understood.length > same.value.rejected.length)
      return accept({ ...same.value, remembered: true })
  }
  const look = await lookAtFile(source, reading ?? undefined)
  return look.ok ? accept({ ...look.value, remembered: false }) : look
}
