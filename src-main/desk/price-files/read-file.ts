import type { Database } from 'better-sqlite3'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { FileReading } from '../../domain/price-list.ts'
import { deletedLine, readRows } from '../../exchange/price-files/read-rows.ts'
import type { PriceSource } from '../../exchange/price-files/read-rows.ts'
import { gather } from '../../store/sqlite/price-file/gather.ts'
import type { Gathered } from '../../store/sqlite/price-file/gather.ts'
import { onOneState, priceState } from '../../store/sqlite/price-file/price-file-work.ts'
import type { Watch } from '../running/watch.ts'
import { cautionsHeard } from './cautions-heard.ts'
import type { Caution } from './cautions-heard.ts'
import { stopped } from './stopped.ts'

/** What work with a price file is told. Plain data, so that it crosses to its thread whole. */
export type FileTask = {
  /** The data file. */
  readonly file: string
  readonly source: PriceSource
  readonly supplierId: string
  readonly reading: FileReading
  /** From which day prices hold that say none; today when the person says none. */
  readonly validFrom?: string | undefined
  readonly today: string
  /** True when rows that the file has not are not missing: it is only a part of the list. */
  readonly part?: boolean | undefined
  readonly most: number
}

export type FileRead = Gathered & {
  readonly fileHash: string
  readonly state: string
  readonly cautions: readonly Caution[]
}

/** The day from which a file's prices hold that carry none of their own. */
export function firstDayOf({ validFrom, today }: FileTask): string {
  return validFrom ?? today
}

/** The day on which a file confirms the rows that it has: today, or the earlier day of its prices; null for a part of a list. */
export function listedOnOf(task: Pick<FileTask, 'validFrom' | 'today' | 'part'>): string | null {
  if (task.part === true) return null
  const from = task.validFrom ?? task.today
  return from < task.today ? from : task.today
}

/** Reads the file once and gathers what it would change in temporary tables of the connection. */
export function readFile(db: Database, task: FileTask, watch: Watch): Promise<Outcome<FileRead>> {
  return onOneState(db, async () => {
    const state = priceState(db)
    const { reading, source, supplierId, most } = task
    const gatherer = gather(db, {
      supplierId,
      validFrom: firstDayOf(task),
      codeAt: codeAtOf(reading),
      readingKey: JSON.stringify(reading),
      part: task.part === true,
      most,
    })
    const cautions = cautionsHeard(most)
    const heard = await readRows(source, reading, {
      ...gatherer,
      noted: cautions.noted,
      // A line that is taken back is no longer in the list, however it stood before.
      raw: (rowNo, cells, fault) => (fault === deletedLine ? 'read' : gatherer.raw(rowNo, cells)),
      progress: (ratio) => watch.goesOn('Reading the file', ratio),
    })
    if (!heard.ok) return watch.stopped() ? stopped() : heard
    const { fileHash } = heard.value
    return accept({ ...gatherer.end(), fileHash, state, cautions: cautions.all() })
  })
}

/** A catalogue's lines are laid out with the code first. */
function codeAtOf({ form, columns }: FileReading): number | null {
  if (form === 'ublCatalogue') return 0
  return columns.find(({ meaning }) => meaning === 'code')?.at ?? null
}
