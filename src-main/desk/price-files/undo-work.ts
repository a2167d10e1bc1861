import type { Outcome } from '../../domain/outcome.ts'
import type { ChangeCounts } from '../../domain/price-list.ts'
import { undoChange } from '../../store/price-list/changes.ts'
import { closeStore, openStore, writing } from '../../store/store.ts'

export type UndoTask = {
  readonly kind: 'undo'
  readonly folder: string
  readonly changeNo: number
  /** This moment as an ISO date and time. */
  readonly at: string
}

/** Undoes a change of prices over a connection of the thread's own. */
export async function undoPrices({
  folder,
  changeNo,
  at,
}: UndoTask): Promise<Outcome<{ counts: ChangeCounts }>> {
  const opened = await openStore({ folder, now: () => at })
  if (!opened.ok) return opened
  try {
    const undone = await writing(opened.value, (tx) => undoChange(tx, changeNo, at))
    return undone.ok ? { ok: true, value: { counts: undone.value } } : undone
  } finally {
    await closeStore(opened.value)
  }
}
