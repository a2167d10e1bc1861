import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import { openDesk } from '../../../src-main/desk/open-desk.ts'
import type { OpenDesk } from '../../../src-main/desk/open-desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { readPdf } from '../../documents/read-pdf.ts'

let folder: string
let open: OpenDesk

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tailpiece-kept-'))
  const opened = await openDesk({ dataFolder: join(folder, 'data'), mayChoosePath: true })
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  open = opened.value
})
afterAll(async () => {
  await open.close()
  await rm(folder, { recursive: true })
})

async function ask<N extends RequestName>(name: N, input: InputOf<N>): Promise<AnswerOf<N>> {
  const outcome = await answer(name, input, open.desk())
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value as AnswerOf<N>
}

describe('an issued quote', () => {
  it('prints what it said when it was issued, byte for byte, whatever prices have become since', async () => {
    const { job } = await ask('job.sample', {})
    const before = await ask('quote.build', { job })
    const { quoteId } = await ask('quote.issue', { job })
    await ask('quote.pdf', { quoteId, out: join(folder, 'first.pdf') })

    const rail = { itemId: 'rail-curved-chrome-600x1500', packHolds: 1, packPence: 99_999 }
    const { prices } = await ask('catalogue.item', { itemId: rail.itemId })
    for (const { supplier } of prices) {
      await ask('price.set', { ...rail, supplierId: supplier.supplierId, code: 'DEAR-1' })
      await ask('price.set', { ...rail, supplierId: supplier.supplierId, code: 'RA-CU-CH-600X1500' })
    }
    const after = await ask('quote.build', { job })
    await ask('quote.pdf', { quoteId, out: join(folder, 'second.pdf') })

    expect(after.totals.grossPence).not.toBe(before.totals.grossPence)
    const [first, second] = await Promise.all([
      readFile(join(folder, 'first.pdf')),
      readFile(join(folder, 'second.pdf')),
    ])
    expect(first.equals(second)).toBe(true)
    const pounds = (before.totals.grossPence / 100).toFixed(2)
    const { text } = await readPdf(second)
    expect(text).toContain(`£${pounds}`)
    expect(text).toContain(quoteId)
  })

  it('is not there under another name', async () => {
    const outcome = await answer('quote.pdf', { quoteId: 'Q-1999-0001' }, open.desk())
    expect(outcome.ok ? null : outcome.problems[0]).toMatchObject({ code: 'not-found', path: 'quoteId' })
  })
})
