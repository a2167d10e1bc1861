import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { customerQuoteView } from '../../src-main/documents/customer-quote-view.ts'
import type { QuoteMaterial } from '../../src-main/documents/customer-quote-view.ts'
import { quoteDocument } from '../../src-main/documents/quote-document.ts'
import { testMaterial } from './material-for-tests.ts'
import { readPdf } from './read-pdf.ts'

async function readBack(changes: Partial<QuoteMaterial>) {
  const view = customerQuoteView(testMaterial(changes))
  return readPdf((await printPdf(quoteDocument(view), { createdOn: '2026-03-02' })).bytes)
}

const issued = { number: 'Q-2026-0007', issuedOn: '2026-03-05' } as const

describe('a quote that is issued', { timeout: 60_000 }, () => {
  it('bears its number, its day and its last day, on the first page, at each foot and above the signature', async () => {
    const { pages, told, info } = await readBack({ ...issued, revision: 0, validUntil: '2026-03-31' })
    expect(pages[0]?.join('\n')).toContain('Q-2026-0007')
    expect(pages[0]?.join('\n')).toContain('5 March 2026')
    expect(pages[0]?.join('\n')).toContain('31 March 2026')
    for (const rows of pages) expect(rows.at(-1)).toMatch(/Test Heating · Quote Q-2026-0007 Page \d of \d/)
    expect(told).toContain(
      'I accept quote Q-2026-0007 of 5 March 2026, which stands until 31 March 2026, for',
    )
    expect(told).toContain('Signed, for Test Customer')
    expect(told).not.toMatch(/draft|revision/i)
    expect(info['Title']).toBe('Quote Q-2026-0007')
  })

  it('says which revision it is from the first one on', async () => {
    const { pages, told, info } = await readBack({ ...issued, revision: 2 })
    expect(pages[0]?.join('\n')).toContain('Revision 2')
    for (const rows of pages) expect(rows.at(-1)).toContain('Quote Q-2026-0007, revision 2 Page')
    expect(told).toContain('I accept quote Q-2026-0007, revision 2, of 5 March 2026')
    expect(info['Title']).toBe('Quote Q-2026-0007, revision 2')
    expect((await readBack({ ...issued, revision: 1 })).told).toContain('Revision 1')
  })

  it('stands for as many days as the firm says from its issue on, where nobody names the last day', async () => {
    // Thirty days after 5 March are 4 April.
    expect((await readBack(issued)).told).toContain('This quote stands until')
    expect((await readBack(issued)).told).toContain('4 April 2026')
  })

  it('keeps its reference beside its number, once where they are the same', async () => {
    expect((await readBack(issued)).text).toContain('TEST-7')
    const same = await readBack({ ...issued, reference: issued.number })
    expect(same.pages[0]?.join('\n')).not.toContain('Reference')
  })
})

describe('a quote that is not issued', { timeout: 60_000 }, () => {
  it.each([
    ['without a number and a day', {}],
    ['with a number and no day', { number: 'Q-2026-0007' }],
    ['with a day and no number', { issuedOn: '2026-03-05' }],
    ['with a revision alone', { revision: 3 }],
  ])('is a draft %s: marked on each page and in its title, with no place to sign', async (_, changes) => {
    const { pages, told, info } = await readBack(changes)
    expect(pages[0]?.join('\n')).toContain('Draft, not yet issued')
    for (const rows of pages) expect(rows.at(-1)).toContain('Draft of quote TEST-7, not yet issued Page')
    expect(info['Title']).toBe('Draft of quote TEST-7, not yet issued')
    expect(told).toContain('This quote would stand until')
    expect(told).toContain('There is nothing to sign yet.')
    expect(told).not.toMatch(/Signed, for|I accept|Quote number|Revision/)
  })
})

describe('heat on the quote', { timeout: 60_000 }, () => {
  it('is read first in the unit that the firm reads first', async () => {
    const { firm } = testMaterial()
    // 1008 W x 3.412142 = 3439.4 BTU/h; 918 W x 3.412142 = 3132.3 BTU/h (NIST SP 811, Appendix B).
    const { told } = await readBack({ firm: { ...firm, heatFirst: 'BtuPerHour' } })
    expect(told).toContain('needs about 3,439 BTU/h (1,008 W).')
    expect(told).toContain('it will have 3,132 BTU/h (918 W).')
    expect((await readBack({ firm: { ...firm, heatFirst: 'W' } })).told).toContain('918 W (3,132 BTU/h)')
  })
})
