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

describe('after the job', () => {
  it('notes hours, a variation and the record, makes the papers, and closes the job for good', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await follow(page, 'After the job')
    await page.getByRole('heading', { name: 'Nothing to note yet' }).waitFor()
    expect(await found(page)).toEqual([])

    await follow(page, 'Go to the quote')
    await press(page, 'Issue the quote')
    await press(page, /^It was accepted/)
    await press(page, 'Note it as accepted')
    await page.getByText('This job has an accepted quote.').waitFor()
    await follow(page, 'After the job')
    const account = page.getByRole('region', { name: 'Final account' })
    await account.getByText('Still to pay').waitFor()

    await fill(page, 'Minutes for Set up and protect a room', '30')
    await fill(page, 'What was added or left out', 'One more isolating valve')
    await fill(page, 'Their words', 'Yes please')
    await fill(page, 'Price before VAT (£)', '32.17')
    await press(page, 'Add the variation')
    await press(page, 'Put all that is left back into the van')
    await fill(page, 'Done by', 'A. Fitter')
    await fill(page, 'Paid so far (£)', '100')
    await account.getByText('£32.17', { exact: true }).waitFor()
    await account.getByText('£100.00', { exact: true }).waitFor()
    await page.getByText('Kept as you type', { exact: true }).waitFor()
    expect(await found(page)).toEqual([])

    await press(page, 'Final account PDF')
    const save = page.getByRole('link', { name: /^Save final-account-/ })
    await save.waitFor()
    const [download] = await Promise.all([page.waitForEvent('download'), save.click()])
    const { text } = await pdfTextOf(download)
    expect(text).toContain('One more isolating valve')
    expect(text).toContain('“Yes please”')

    await press(page, 'Close the job …')
    await page.getByRole('dialog').getByText('lets the hours teach your labour figures').waitFor()
    await press(page, 'Close it')
    await page.getByRole('note', { name: /^Closed on / }).waitFor()
    await page.getByRole('region', { name: 'What your jobs have taught' }).getByText('1 job').waitFor()
    expect(await page.getByLabel('Paid so far (£)').getAttribute('readonly')).not.toBeNull()
    expect(await page.getByRole('button', { name: 'Add the variation' }).count()).toBe(0)
    expect(await found(page)).toEqual([])
  })
})
