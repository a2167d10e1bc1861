import type { AfterJob } from '../../domain/follow-up/after-job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { ReadTx } from '../../store/tables.ts'
import { readVanMoves } from '../../store/van/van-stock.ts'

/** What happened on a job, if it can be kept: each variation once, and nothing back to the van that the van keeps no account of. */
export async function soundAfterJob(tx: ReadTx, { parts, variations }: AfterJob): Promise<Outcome<true>> {
  const problems: Problem[] = []
  for (const [at, { itemId, name, backToVan = 0 }] of parts.entries()) {
    if (backToVan === 0) continue
    if (itemId !== undefined && (await readVanMoves(tx, itemId)) !== null) continue
    problems.push({
      code: 'invalid',
      message: `${name} is no item of the catalogue, so the van keeps no account of it; put nothing of it back.`,
      path: `afterJob.parts[${at}].backToVan`,
      next: 'Add it to the catalogue, and note it in the van there.',
    })
  }
  const ids = variations.map(({ variationId }) => variationId)
  for (const [at, id] of ids.entries()) {
    if (ids.indexOf(id) === at) continue
    const message = `Two variations are called ${id}; each has a name of its own.`
    problems.push({ code: 'invalid', message, path: `afterJob.variations[${at}].variationId` })
  }
  return problems.length === 0 ? accept(true) : { ok: false, problems }
}
