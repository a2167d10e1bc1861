import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import PostalMime from 'postal-mime'
import type { Locator, Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { fill, follow, pdfTextOf, press } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const railCode = 'RA-CU-CH-600X1500'
const rail = 'Curved towel rail, chrome, 600 wide x 1500 high'

/** One issued quote in the list of them, by its name. */
const quoteNamed = (page: Page, name: string): Locator =>
  page
    .getByRole('list', { name: 'Issued quotes' })
    .locator(':scope > li')
    .filter({ has: page.getByRole('heading', { name, exact: true }) })

/** The cells of the row of a table that has this name. */
async function rowOf(table: Locator, name: string): Promise<readonly string[]> {
  const row = table.getByRole('row').filter({ has: table.page().getByRole('rowheader', { name }) })
  return row.getByRole('cell').allInnerTexts()
}

/** Saves what a link offers. */
async function saved(page: Page, name: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name, exact: true }).click(),
  ])
  expect(download.suggestedFilename()).toBe(name.replace('Save a copy of ', ''))
  return readFile(await download.path())
}

/** Puts another price on the towel rail of the sample job, on the page of prices. */
async function railNowCosts(page: Page, was: string, is: string): Promise<void> {
  await follow(page, 'Prices')
  const grid = page.getByRole('grid', { name: 'Prices found' })
  await grid.waitFor()
  await fill(page, 'Code, name or size', railCode)
  await page.getByText('2 rows', { exact: true }).waitFor()
  await grid.focus()
  await page.keyboard.press('F2')
  const box = page.getByRole('textbox', { name: `List price of ${railCode}`, exact: true })
  await box.fill(is)
  await page.keyboard.press('Enter')
  await page.getByText(`${railCode}: £${was} is now £${is}.`).waitFor()
}

describe('an issued quote', () => {
  it('goes to the customer as PDF, mail draft and open form, each with what was issued', async () => {
    app = await openApp()
    const { page, faults } = app
    await press(page, 'Open the sample job')
    await follow(page, 'Papers')
    await press(page, 'Issue the quote')
    const quote = quoteNamed(page, 'Q-2026-0001')
    await quote.getByText('Issued, not sent yet').waitFor()
    expect(await quote.innerText()).toContain('£801.01')

    await press(page, 'Get the PDF of Q-2026-0001')
    const link = page.getByRole('link', { name: 'Save a copy of quote-Q-2026-0001.pdf', exact: true })
    const [download] = await Promise.all([page.waitForEvent('download'), link.click()])
    const { text } = await pdfTextOf(download)
    expect(text).toContain('Q-2026-0001')
    expect(text).toContain('£801.01')
    const pdf = await readFile(await download.path())

    await press(page, 'Make a mail draft of Q-2026-0001')
    await page.getByText('A draft to robin@example.com').waitFor()
    const mail = await PostalMime.parse(await saved(page, 'Save a copy of quote-Q-2026-0001.eml'))
    expect(mail.text).toContain('Total with VAT: £801.01')
    const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
    expect(mail.attachments.map(({ content }) => hash(new Uint8Array(content as ArrayBuffer)))).toEqual([
      hash(pdf),
    ])

    await press(page, 'Open form (XML) of Q-2026-0001')
    const xml = (await saved(page, 'Save a copy of quote-Q-2026-0001.xml')).toString('utf8')
    expect(xml).toContain('<cbc:PayableAmount currencyID="GBP">801.01</cbc:PayableAmount>')
    expect(await quote.getByText(/^Kept at .*quote-Q-2026-0001\.(?:pdf|eml|xml)$/).count()).toBe(3)
    expect(await found(page)).toEqual([])
    expect(faults).toEqual([])
  })

  it('is sent, revised when a part gets dearer, and accepted with what has changed since, line by line', async () => {
    app = await openApp()
    const { page, faults } = app
    await press(page, 'Open the sample job')
    await follow(page, 'Papers')
    await press(page, 'Issue the quote')
    const first = quoteNamed(page, 'Q-2026-0001')
    await first.getByText('Issued, not sent yet').waitFor()
    const papers = page.url()
    await press(page, 'It was sent: Q-2026-0001')
    expect(await found(page)).toEqual([])
    await press(page, 'Note it as sent')
    await first.getByText('With the customer').waitFor()

    await railNowCosts(page, '98.23', '104.23')
    await page.goto(papers)
    await press(page, 'What happened since: Q-2026-0001')
    // By hand: 104.23 - 98.23 = 6.00 for the firm.
    await first.getByText('It costs you £6.00 more than when the quote was issued.').waitFor()
    expect(await rowOf(first.getByRole('table').first(), rail)).toEqual(['£98.23', '£104.23', '+£6.00'])
    // With 20 % on top: 98.23 x 1.2 = 117.876, so 117.88; 104.23 x 1.2 = 125.076, so 125.08. Before VAT 667.51 + 7.20 = 674.71,
    // VAT at 20 % 134.942, so 134.94; together 809.65.
    const compared = first.getByRole('table').last()
    await compared.getByText('£809.65').waitFor()
    expect(await rowOf(compared, rail)).toEqual(['£117.88', '£125.08', '+£7.20'])
    expect(await rowOf(compared, 'With VAT')).toEqual(['£801.01', '£809.65', '+£8.64'])
    expect(await compared.getByRole('row').count()).toBe(3)
    expect(await found(page)).toEqual([])

    await fill(page, 'What has changed, for your own record', 'The rail went up')
    await press(page, 'Issue revision 1')
    await first.getByText('Replaced by a later revision').first().waitFor()
    expect(await first.getByRole('button', { name: /^Make a mail draft/ }).count()).toBe(0)
    const second = quoteNamed(page, 'Q-2026-0001-R1')
    expect(await second.innerText()).toContain('£809.65')

    await railNowCosts(page, '104.23', '106.23')
    await page.goto(papers)
    await press(page, 'It was accepted: Q-2026-0001-R1')
    // 106.23 x 1.2 = 127.476, so 127.48; before VAT 674.71 + 2.40 = 677.11, VAT 135.422, so 135.42; together 812.53.
    await second.getByText('It costs you £2.00 more than when the quote was issued.').waitFor()
    await second.getByText('the same quote would come to £812.53').waitFor()
    expect(await rowOf(second.getByRole('table'), rail)).toEqual(['£104.23', '£106.23', '+£2.00'])
    expect(await found(page)).toEqual([])
    await fill(page, 'Why, or what was said', 'By telephone')
    await press(page, 'Note it as accepted')
    await second.getByText('Accepted', { exact: true }).first().waitFor()
    expect(await second.innerText()).toContain('£809.65')

    await press(page, 'What happened since: Q-2026-0001-R1')
    const history = second.getByRole('listitem')
    await history.filter({ hasText: 'Accepted: By telephone' }).waitFor()
    expect(await history.allInnerTexts()).toEqual([
      '25 Nov 2026 Issued: The rail went up',
      expect.stringContaining('With today’s prices the same quote would come to £812.53.'),
    ])
    expect(await found(page)).toEqual([])
    expect(faults).toEqual([])
  })
})

describe('the numbers of quotes', () => {
  it('are as the firm wants them, shown by the next one, and a pattern without a number is explained', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Your firm')
    await fill(page, 'Name of the firm', 'Invented Heating')
    await page.getByText('The next new quote would be Q-2026-0001.').waitFor()
    await fill(page, 'How your quotes are numbered', 'IH-{yy}')
    await page.getByText('This needs the number once').waitFor()
    expect(await found(page)).toEqual([])
    await press(page, 'Save the firm')
    await page.getByRole('alert').getByText('This needs the number once').waitFor()
    await fill(page, 'How your quotes are numbered', 'IH-{yy}-{nnn}')
    await page.getByText('The next new quote would be IH-26-001.').waitFor()
    await press(page, 'Save the firm')
    await page.getByRole('note', { name: 'The firm is saved' }).waitFor()
    await page.reload()
    expect(await page.getByLabel('How your quotes are numbered').inputValue()).toBe('IH-{yy}-{nnn}')
  })
})
