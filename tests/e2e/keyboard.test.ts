import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { waitUntilSaved } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const mostTabs = 200

/** Presses the tab key until the thing in focus has this name. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    await page.keyboard.press('Tab')
    const here = await page.evaluate(() => {
      const focus = document.activeElement
      return [
        focus?.getAttribute('aria-label'),
        focus?.textContent,
        (focus as HTMLInputElement)?.labels?.[0]?.textContent,
      ]
    })
    if (here.some((text) => text?.trim() === name)) return
  }
  throw new Error(`The tab key does not lead to ${name}.`)
}

describe('without a mouse', () => {
  it('the tab and enter keys lead from the list of jobs to the quote PDF, its reasons and its copy', async () => {
    app = await openApp()
    const { page } = app
    await tabTo(page, 'Open the sample job')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'The customer' }).waitFor()
    await tabTo(page, 'Parts and price')
    await page.keyboard.press('Enter')
    await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
    await tabTo(page, 'Why: the whole price')
    await page.keyboard.press('Enter')
    await page.getByText('The lines added up').waitFor()
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY')
    await tabTo(page, 'Papers')
    await page.keyboard.press('Enter')
    await tabTo(page, 'Make the quote PDF')
    await page.keyboard.press('Enter')
    await page.getByRole('link', { name: 'Save a copy', exact: true }).waitFor()
    await tabTo(page, 'Save a copy')
  })

  it('undo and redo answer to their keys inside a box', async () => {
    app = await openApp()
    const { page } = app
    await page.getByRole('button', { name: 'Open the sample job' }).click()
    const name = page.getByLabel('Your reference')
    await name.fill('OTHER')
    await page.keyboard.press('Control+z')
    expect(await name.inputValue()).toBe('SAMPLE-1')
    await page.keyboard.press('Control+Shift+z')
    expect(await name.inputValue()).toBe('OTHER')
    await waitUntilSaved(page)
  })

  it('the first stop leads past the bar to the page', async () => {
    app = await openApp()
    const { page } = app
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main')
  })

  it('the keys of the window let a person type, and leave a dialog alone', async () => {
    app = await openApp()
    const { page } = app
    await page.getByRole('button', { name: 'Open the sample job' }).click()
    const reference = page.getByLabel('Your reference')
    await reference.fill('')
    await reference.focus()
    await page.keyboard.type('Is it 3 kW')
    expect(await reference.inputValue()).toBe('Is it 3 kW')
    expect(await page.getByRole('dialog').count()).toBe(0)
    await page.keyboard.press('?')
    expect(await page.getByRole('dialog').count()).toBe(0)
    await page.getByRole('button', { name: 'Screen and keys' }).click()
    await page.getByRole('dialog').getByText('go on to the next thing to do').waitFor()
    const before = page.url()
    await page.keyboard.press('Control+Enter')
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    expect(page.url()).toBe(before)
    await waitUntilSaved(page)
  })

  it('leaving a page never loses the focus', async () => {
    app = await openApp()
    const { page } = app
    const focus = async () => page.evaluate(() => document.activeElement?.tagName)
    await page.getByRole('button', { name: 'Open the sample job' }).click()
    await page.getByRole('heading', { name: 'The customer' }).waitFor()
    await page.keyboard.press('Control+Enter')
    await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
    await expect.poll(focus).not.toBe('BODY')
    await page.keyboard.press('Control+k')
    await page.keyboard.type('add a room')
    await page.getByRole('option', { name: 'Add a room to this job', selected: true }).waitFor()
    await page.keyboard.press('Enter')
    await expect.poll(async () => page.evaluate(() => document.activeElement?.id)).toBe('new-room-name')
    await page.keyboard.press('Enter')
    await page.getByText('The room wants a name').waitFor()
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('new-room-name')
  })
})
