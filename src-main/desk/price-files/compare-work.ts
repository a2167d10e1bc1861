import type { AnswerOf } from '../../contract/requests.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { comingPrices, report } from '../../store/sqlite/price-file/report.ts'
import { knownSupplier, withConnection } from '../../store/sqlite/price-file/price-file-work.ts'
import { suggestLinks } from '../../store/sqlite/price-file/suggest.ts'
import type { Watch } from '../running/watch.ts'
import { firstDayOf, readFile } from './read-file.ts'
import type { FileTask } from './read-file.ts'
import { stopped } from './stopped.ts'

export type CompareTask = FileTask & { readonly kind: 'compare'; readonly folder: string }
export type Compared = AnswerOf<'priceFile.compare'>

/** What a price file would change; nothing is written. */
export function compareFile(task: CompareTask, watch: Watch): Promise<Outcome<Compared>> {
  return withConnection(task.file, async (db): Promise<Outcome<Compared>> => {
    const known = knownSupplier(db, task.supplierId)
    if (!known.ok) return known
    const read = await readFile(db, task, watch)
    if (!read.ok) return read
    if (!watch.goesOn('Comparing', null)) return stopped()
    const { counts, rejected, duplicated, cautions, fileHash } = read.value
    const rows = report(db, task.most)
    const suggested = suggestLinks(db, task.most)
    const day = firstDayOf(task) > task.today ? firstDayOf(task) : task.today
    const coming = comingPrices(db, day)
    if (!watch.goesOn('Working out open jobs', null)) return stopped()
    // Working up jobs wants most of the program, so it is loaded only when a price of theirs would change.
    const { openWorkWith } = coming.length === 0 ? noWork : await import('./open-work-with.ts')
    const work = await openWorkWith(coming, task, day)
    const told = { rejected, duplicated, cautions }
    return accept({ fileHash, counts, ...rows, ...told, openWork: work, suggested })
  })
}

const noWork = { openWorkWith: () => Promise.resolve([]) }
