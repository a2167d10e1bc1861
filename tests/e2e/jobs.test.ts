import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { fill, follow, press, waitUntilSaved } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const mostTabs = 120

/** Presses the tab key until the thing in focus has this name. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    await page.keyboard.press('Tab')
    const here = await page.evaluate(() => {
      const focus = document.activeElement
      const labels = (focus as HTMLInputElement | null)?.labels
      return [focus?.getAttribute('aria-label'), focus?.textContent, labels?.[0]?.textContent]
    })
    if (here.some((text) => text?.trim() === name)) return
  }
  throw new Error(`The tab key does not lead to ${name}.`)
}

/** Puts text in the place of what is in the box in focus. */
async function retype(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+a')
  await page.keyboard.type(text)
}

/** Opens the search over everything, types, waits for the first of what it finds, and goes there. */
async function findAndGo(page: Page, text: string, name: RegExp): Promise<void> {
  await page.keyboard.press('Control+k')
  await page.keyboard.type(text)
  await page.getByRole('option', { name, selected: true }).waitFor()
  await page.keyboard.press('Enter')
  await page.getByRole('dialog', { name: 'Find' }).waitFor({ state: 'hidden' })
}

const focusedId = (page: Page) => page.evaluate(() => document.activeElement?.id)

describe('the first day, by keyboard alone', () => {
  it('leads from the first steps to the sample job, and back into the list with its price', async () => {
    app = await openApp()
    const { page } = app
    await tabTo(page, 'Set up your firm')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'The first steps' }).waitFor()
    await tabTo(page, 'Name of the firm')
    await page.keyboard.type('Invented Heating')
    await tabTo(page, 'An hour of work, before VAT (£)')
    await retype(page, 'plenty')
    await page.keyboard.press('Enter')
    await page.getByRole('alert', { name: 'Not all of it is saved yet' }).waitFor()
    await page
      .getByRole('button', { name: 'What an hour of work is charged at must be a number; it was “plenty”.' })
      .focus()
    await page.keyboard.press('Enter')
    expect(await focusedId(page)).toBe('figures.money.labourPencePerHour')
    await retype(page, '60')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'That is all it takes' }).waitFor()
    await tabTo(page, 'Open the sample job')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: /^Sample/, level: 1 }).waitFor()
    await findAndGo(page, 'jobs', /^Jobs/)
    await page.getByRole('heading', { name: 'Jobs', level: 1 }).waitFor()
    expect(await focusedId(page)).toBe('main')
    const row = page.getByRole('listitem').filter({ hasText: 'Sample' })
    await row.getByText(/Make the quote/).waitFor()
    expect(await row.innerText()).toMatch(/£\d+\.\d\d with VAT/)
    expect(app.faults).toEqual([])
  })

  it('can be skipped, stays skipped, and is found again', async () => {
    app = await openApp()
    const { page } = app
    await tabTo(page, 'Not now')
    await page.keyboard.press('Enter')
    await page.getByRole('link', { name: 'Set up your firm' }).waitFor({ state: 'hidden' })
    await page.reload()
    await page.getByRole('heading', { name: 'No jobs yet' }).waitFor()
    expect(await page.getByRole('link', { name: 'Set up your firm' }).count()).toBe(0)
    await findAndGo(page, 'steps first', /The first steps again/)
    await page.getByRole('heading', { name: 'The first steps' }).waitFor()
    await tabTo(page, 'Skip for now')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Jobs', level: 1 }).waitFor()
  })
})

describe('the list of jobs', () => {
  it('duplicates, sets a stage, archives and takes out again, and shows each choice', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByRole('heading', { name: 'The customer' }).waitFor()
    await follow(page, 'Jobs')
    const rows = page.getByRole('list', { name: 'Jobs' }).getByRole('listitem')
    await rows.first().waitFor()
    await tabTo(page, await nameOfMore(page))
    await page.keyboard.press('Enter')
    await page.getByRole('menuitem', { name: 'Duplicate' }).waitFor()
    await page.waitForFunction(() => document.activeElement?.textContent === 'Duplicate')
    await page.keyboard.press('Enter')
    await page.getByText(/\(copy\)” is a job of its own now/).waitFor()
    const copy = rows.filter({ hasText: '(copy)' })
    await copy.getByRole('combobox').selectOption('Accepted')
    await copy.getByText(/Order the parts/).waitFor()
    await page.getByLabel('Show', { exact: true }).selectOption('Accepted (1)')
    expect(await rows.count()).toBe(1)
    await page.getByRole('button', { name: /^More for/ }).click()
    await page.getByRole('menuitem', { name: 'Archive' }).click()
    await page.getByText(/\(copy\)” is in the archive/).waitFor()
    await press(page, 'Show all jobs')
    expect(await rows.count()).toBe(1)
    await page.getByLabel('Show', { exact: true }).selectOption('Archived jobs (1)')
    await copy.waitFor()
    await press(page, 'Put it back as it was')
    await page.getByRole('heading', { name: 'No job is here' }).waitFor()
    await press(page, 'Show all jobs')
    await copy.waitFor()
    expect(await copy.getByRole('combobox').inputValue()).toBe('accepted')
    expect(app.faults).toEqual([])
  })

  it('shows the stage that was set in the open job', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByLabel('Stage of the job').selectOption('Not going ahead')
    await waitUntilSaved(page)
    await page.keyboard.press('Control+z')
    expect(await page.getByLabel('Stage of the job').inputValue()).toBe('surveying')
    await page.keyboard.press('Control+Shift+z')
    expect(await page.getByLabel('Stage of the job').inputValue()).toBe('lost')
    await waitUntilSaved(page)
    await follow(page, 'Jobs')
    await page.getByLabel('Show', { exact: true }).selectOption('Not going ahead (1)')
    await page
      .getByRole('list', { name: 'Jobs' })
      .getByRole('link', { name: /^Sample/ })
      .waitFor()
  })
})

/** The name of the first row's button for what else can be done. */
async function nameOfMore(page: Page): Promise<string> {
  return (
    (await page
      .getByRole('button', { name: /^More for/ })
      .first()
      .getAttribute('aria-label')) ?? ''
  )
}

describe('the search over everything, by keyboard alone', () => {
  it('goes to a room and a swap, undoes, makes the quote and begins a job', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByRole('heading', { name: 'The customer' }).waitFor()
    await page.getByLabel('Your reference').fill('OTHER')
    await findAndGo(page, 'undo', /^Undo/)
    await page.getByLabel('Your reference').waitFor()
    expect(await page.getByLabel('Your reference').inputValue()).toBe('SAMPLE-1')
    await waitUntilSaved(page)
    await findAndGo(page, 'quote pdf', /^Make the quote PDF/)
    await page.getByRole('link', { name: 'Save a copy', exact: true }).waitFor()
    await follow(page, 'Catalogue')
    await page.getByRole('heading', { name: 'Catalogue', level: 1 }).waitFor()
    await page.keyboard.press('Control+k')
    await page.keyboard.type('sample back room')
    await page.getByRole('option', { name: /^Back bedroom/ }).waitFor()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Escape')
    await findAndGo(page, 'swap bathroom towel', /^Swap in/)
    await page.getByRole('heading', { name: 'On the wall' }).waitFor()
    expect(page.url()).toMatch(/\/survey\/swap\//)
    await findAndGo(page, 'new', /^New job/)
    await page.getByLabel('What the job is').waitFor()
    expect(app.faults).toEqual([])
  })

  it('keeps its own letters to itself', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByLabel('Your reference').fill('OTHER')
    await page.keyboard.press('Control+k')
    await page.keyboard.type('zz')
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Escape')
    expect(await page.getByLabel('Your reference').inputValue()).toBe('OTHER')
  })
})

describe('how the screen looks', () => {
  it('is set by keyboard, and remembered', async () => {
    app = await openApp({ scheme: 'light' })
    const { page } = app
    const size = () => page.evaluate(() => getComputedStyle(document.documentElement).fontSize)
    const scheme = () => page.evaluate(() => document.documentElement.dataset['mantineColorScheme'])
    await page.getByRole('button', { name: 'Not now' }).focus()
    await page.keyboard.press('Shift+?')
    await page.getByRole('radiogroup', { name: 'Size of the text' }).waitFor()
    await page.getByRole('radio', { name: 'Usual' }).focus()
    await page.keyboard.press('ArrowRight')
    expect(await size()).toBe('18px')
    await page.keyboard.press('ArrowRight')
    expect(await size()).toBe('20px')
    await page.getByRole('radio', { name: 'Dark' }).focus()
    await page.keyboard.press('Space')
    expect(await scheme()).toBe('dark')
    await page.reload()
    await page.getByRole('heading', { name: 'Jobs', level: 1 }).waitFor()
    expect([await size(), await scheme()]).toEqual(['20px', 'dark'])
    await press(page, 'Screen and keys')
    await page.getByRole('radio', { name: 'As this machine says' }).check()
    expect(await scheme()).toBe('light')
  })

  it('leaves a question mark that is being typed alone', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'New job')
    await page.getByLabel('What the job is').waitFor()
    await page.keyboard.type('Rail?')
    expect(await page.getByLabel('What the job is').inputValue()).toBe('Rail?')
    expect(await page.getByRole('dialog').count()).toBe(0)
  })
})

describe('the firm’s own figures', () => {
  it('change the price, are refused with a sentence, and go back to the usual', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Your firm')
    const rate = page.getByRole('textbox', { name: 'What an hour of work is charged at' })
    await rate.fill('5000')
    await press(page, 'Save 1 figure')
    await page
      .getByText('What an hour of work is charged at must be between £0.00 and £1000.00; it was £5000.00.')
      .first()
      .waitFor()
    await rate.fill('61.50')
    await press(page, 'Save 1 figure')
    await page.getByText('The figures are saved').waitFor()
    await page.reload()
    await rate.waitFor()
    expect(await rate.inputValue()).toBe('61.50')
    await press(page, 'Back to the usual: What an hour of work is charged at')
    await page.getByText('The figures are saved').waitFor()
    expect(await rate.inputValue()).toBe('52.00')
  })

  it('a logo is shown as it is chosen, and what is no picture is refused', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Your firm')
    const box = page.getByLabel('Picture file for the logo')
    const file = (name: string, mimeType: string, text: string) => ({
      name,
      mimeType,
      buffer: Buffer.from(text),
    })
    await box.setInputFiles(file('logo.png', 'image/png', 'no picture at all'))
    await page.getByText(/cannot be read as a picture/).waitFor()
    await box.setInputFiles(file('logo.gif', 'image/gif', 'GIF89a'))
    await page.getByText(/is no PNG, JPEG or SVG/).waitFor()
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><path d="M0 0h40v20H0z"/></svg>'
    await box.setInputFiles(file('logo.svg', 'image/svg+xml', svg))
    await page.getByRole('img', { name: 'Your logo as it is now' }).waitFor()
    await fill(page, 'Name of the firm', 'Invented Heating')
    await press(page, 'Save the firm')
    await page.getByRole('note', { name: 'The firm is saved' }).waitFor()
    await page.reload()
    await page.getByRole('img', { name: 'Your logo as it is now' }).waitFor()
    expect(app.faults).toEqual([])
  })
})

describe('axe, light and dark', () => {
  it('finds nothing in the first steps, whole or refused, nor in what comes after', async () => {
    app = await openApp()
    const { page } = app
    expect(await found(page)).toEqual([])
    await follow(page, 'Set up your firm')
    await page.getByRole('heading', { name: 'The first steps' }).waitFor()
    expect(await found(page)).toEqual([])
    await press(page, 'Save and go on')
    await page.getByRole('alert', { name: 'Not all of it is saved yet' }).waitFor()
    expect(await found(page)).toEqual([])
    await fill(page, 'Name of the firm', 'Invented Heating')
    await press(page, 'Save and go on')
    await page.getByRole('heading', { name: 'That is all it takes' }).waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing in the list of jobs, its menu, the search and the keys', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByRole('heading', { name: 'The customer' }).waitFor()
    await page.keyboard.press('Control+k')
    await page.keyboard.type('bath')
    await page.getByRole('option', { name: /^Bathroom/ }).waitFor()
    expect(await found(page)).toEqual([])
    await page.keyboard.press('Escape')
    await follow(page, 'Jobs')
    await page.getByText('with VAT').waitFor()
    expect(await found(page)).toEqual([])
    await page.getByRole('button', { name: /^More for/ }).click()
    await page.getByRole('menuitem', { name: 'Archive' }).waitFor()
    expect(await found(page)).toEqual([])
    await page.getByRole('menuitem', { name: 'Archive' }).click()
    await page.getByText(/is in the archive/).waitFor()
    expect(await found(page)).toEqual([])
    await press(page, 'Screen and keys')
    await page.getByRole('radiogroup', { name: 'Size of the text' }).waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing among the firm’s figures, found, changed and refused', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Your firm')
    await page.getByLabel('Find a figure').fill('vat')
    await page.getByLabel('Standard rate of value added tax').fill('-3')
    await press(page, 'Save 1 figure')
    await page.getByRole('alert').waitFor()
    expect(await found(page)).toEqual([])
  })
})
