import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { fill, follow, press } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const sampleFile = join(import.meta.dirname, '../../resources/sample/two-rooms.job.json')

/** The sample job with two heating elements of a size that no catalogue has. */
async function openWithGaps(page: Page): Promise<void> {
  const sample = JSON.parse(await readFile(sampleFile, 'utf8'))
  const swaps = sample.swaps.map((swap: object, at: number) => ({ ...swap, elementW: 437 + at }))
  const buffer = Buffer.from(JSON.stringify({ ...sample, swaps }))
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'gaps.job.json', mimeType: 'application/json', buffer })
  await page.getByRole('heading', { level: 1, name: /^Sample: towel rail/ }).waitFor()
  await follow(page, 'Parts and price')
  await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
}

async function openSample(page: Page): Promise<void> {
  await press(page, 'Open the sample job')
  await follow(page, 'Parts and price')
  await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
}

/** The last amount of money in a text, in pence, as a person reads it. */
function penceIn(text: string): number {
  const found = [...text.matchAll(/([-−]?)£([\d,]+)\.(\d\d)/g)].at(-1)
  if (found === undefined) throw new Error(`There is no money in "${text}"`)
  const pence = Number(`${found[2]?.replaceAll(',', '')}${found[3]}`)
  return found[1] === '' ? pence : -pence
}

const sums = (page: Page) => page.getByRole('complementary', { name: 'What it comes to' })

async function sumOf(page: Page, label: RegExp): Promise<number> {
  const row = sums(page)
    .locator('div', { has: page.locator('dt', { hasText: label }) })
    .last()
  return penceIn(await row.locator('dd').innerText())
}

type Line = { readonly id: string; readonly name: string; readonly pence: number }

async function linesOnScreen(page: Page): Promise<readonly Line[]> {
  const rows = await page.locator('tr[data-line]').all()
  return Promise.all(
    rows.map(async (row) => ({
      id: (await row.getAttribute('data-line')) ?? '',
      name: (await row.locator('th').textContent()) ?? '',
      pence: penceIn((await row.locator('td').nth(1).textContent()) ?? ''),
    })),
  )
}

/** Adds the lines up with a calculator: their sum, a fifth of it as tax, a quarter of the whole as deposit. */
async function addsUp(page: Page): Promise<readonly Line[]> {
  await sums(page).getByText('Working it out again').waitFor({ state: 'hidden' })
  const lines = await linesOnScreen(page)
  const net = lines.reduce((sum, line) => sum + line.pence, 0)
  const tax = Math.floor((net * 20 + 50) / 100)
  expect(await sumOf(page, /^Before VAT$/)).toBe(net)
  expect(await sumOf(page, /^VAT, standard rate/)).toBe(tax)
  expect(await sumOf(page, /^With VAT$/)).toBe(net + tax)
  expect(await sumOf(page, /^Deposit asked$/)).toBe(Math.floor(((net + tax) * 25 + 50) / 100))
  return lines
}

const mostTabs = 200

/** Presses the tab key until the thing in focus has this name. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    await page.keyboard.press('Tab')
    const here = await page.evaluate(() => {
      const focus = document.activeElement
      const label = (focus as HTMLInputElement | null)?.labels?.[0]?.textContent
      return focus?.getAttribute('aria-label') ?? label ?? focus?.textContent ?? ''
    })
    if (name.test(here.trim())) return
  }
  throw new Error(`The tab key does not lead to ${name}.`)
}

const typeInto = async (page: Page, name: RegExp, text: string) => {
  await tabTo(page, name)
  await page.keyboard.type(text)
}
const go = async (page: Page, name: RegExp) => {
  await tabTo(page, name)
  await page.keyboard.press('Enter')
}

describe('a gap in the parts list', () => {
  it('is filled with a thing by name and cost, and let stand for a reason, and both are undone, by keyboard', async () => {
    app = await openApp()
    const { page } = app
    await openWithGaps(page)
    const gaps = page.getByRole('list', { name: 'Gaps' })
    await gaps.getByText(/no heating element \(437 W/).waitFor()
    const before = await addsUp(page)

    await go(page, /^Fill it: .*437 W/)
    await typeInto(page, /^What it is$/, 'Element, 437 W, from the counter')
    await typeInto(page, /^What one costs you/, '12.34')
    await page.keyboard.press('Enter')
    await gaps.getByText('You filled it with: Element, 437 W, from the counter, £12.34').waitFor()
    await page.locator('tr[data-line]', { hasText: 'from the counter' }).waitFor()
    // 12.34 with the usual mark-up of 30 % is 16.042: 16.04.
    const filled = await addsUp(page)
    expect(filled.find(({ name }) => name.includes('from the counter'))?.pence).toBe(1604)
    expect(filled).toHaveLength(before.length + 1)

    await page.locator('#main').focus()
    await go(page, /^Let it stand: .*438 W/)
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await page.getByText('Say in a few words why the quote may go out without it.').waitFor()
    await page.keyboard.type('The customer buys it')
    await page.keyboard.press('Enter')
    await gaps.getByText('You let it stand: The customer buys it').waitFor()
    await page.getByRole('note', { name: 'Every gap is filled or let stand' }).waitFor()

    await page.locator('#main').focus()
    await go(page, /^Take this back: .*438 W/)
    await page.getByRole('button', { name: /^Fill it: .*438 W/ }).waitFor()
    await page.locator('#main').focus()
    await go(page, /^Take this out: .*437 W/)
    await page.getByRole('button', { name: /^Fill it: .*437 W/ }).waitFor()
    expect(await addsUp(page)).toEqual(before)
    expect(app.faults).toEqual([])
  })

  it('is filled with an item of its kind from the catalogue', async () => {
    app = await openApp()
    const { page } = app
    await openWithGaps(page)
    await page.getByRole('button', { name: /^Fill it: .*437 W/ }).click()
    await page
      .getByRole('list', { name: 'Parts found' })
      .getByRole('button', { name: /^Take .*element/i })
      .first()
      .click()
    await page.getByRole('button', { name: /^Take this out: .*437 W/ }).waitFor()
    expect(await page.getByRole('button', { name: /^Fill it/ }).count()).toBe(1)
    await addsUp(page)
  })
})

describe('a line changed by hand', () => {
  it('shows the old beside the new with the reason, adds up, and is taken off again, by keyboard', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    const before = await addsUp(page)
    await go(page, /^Change: Vent key/)
    await typeInto(page, /^How many or how much/, '3')
    await typeInto(page, /^Price before VAT/, '2')
    await page.keyboard.press('Enter')
    await page.getByText('Say in a few words why it is changed.').waitFor()
    await typeInto(page, /^Reason$/, 'One for the landlord')
    await page.keyboard.press('Enter')
    const row = page.locator('tr[data-line]', { hasText: 'Vent key' })
    await row.getByText('One for the landlord').waitFor()
    await row.getByText('£2.30').waitFor()
    expect(await row.locator('del').allInnerTexts()).toEqual([
      expect.stringContaining('2'),
      expect.stringContaining('£2.30'),
    ])
    const changed = await addsUp(page)
    expect(changed.find(({ name }) => name.includes('Vent key'))?.pence).toBe(200)
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')).toMatch(
      /^Change: Vent key/,
    )
    await page.keyboard.press('Enter')
    await go(page, /^Take the change off$/)
    await row.locator('del').first().waitFor({ state: 'detached' })
    expect(await addsUp(page)).toEqual(before)
    expect(app.faults).toEqual([])
  })

  it('that no longer has its line can be taken off, and then there is a price again', async () => {
    app = await openApp()
    const { page } = app
    const sample = JSON.parse(await readFile(sampleFile, 'utf8'))
    const overrides = [{ lineKey: 'vent gone', quantity: 2, reason: 'It was there' }]
    await page.locator('input[type=file]').setInputFiles({
      name: 'lost.job.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify({ ...sample, overrides })),
    })
    await page.getByRole('heading', { level: 1, name: /^Sample/ }).waitFor()
    await follow(page, 'Parts and price')
    await press(page, 'Take the change off: vent gone')
    await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
    expect((await addsUp(page)).length).toBeGreaterThan(0)
  })
})

describe('how a job is priced', () => {
  it('by margin, with a discount and a chosen option, adds up to the penny', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    const before = await addsUp(page)
    await press(page, 'How it is priced')
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('combobox', { name: 'Radiators and towel rails' }).first().selectOption('margin')
    await dialog.getByLabel('Margin on radiators and towel rails (%)').fill('25')
    await press(page, 'Add a discount')
    const discount = dialog.getByRole('group', { name: 'Discount 1' })
    await discount.getByLabel('What for').fill('Neighbour')
    await discount.getByLabel('Share (%)').fill('10')
    await discount.getByLabel('Taken from').selectOption({ label: 'Labour' })
    await dialog.getByText(/Which rate is right for a line is for your firm to decide/).waitFor()
    await press(page, 'Done')
    await page.getByLabel('Chosen: in the total').check()
    await page.locator('tr[data-line="option-flush"]').waitFor()
    const lines = await addsUp(page)
    // Cost / (1 - 25 %): 59.88 / 0.75 = 79.84; 98.23 / 0.75 = 130.973.
    const at = (name: string) => lines.find((line) => line.name.startsWith(name))?.pence
    expect([at('Double panel radiator'), at('Curved towel rail')]).toEqual([7984, 13_097])
    const labour = before
      .filter(({ id }) => id.startsWith('labour-'))
      .reduce((sum, line) => sum + line.pence, 0)
    expect(at('Discount: Neighbour')).toBe(-Math.floor((labour * 10 + 50) / 100))
    expect(at('Clean the whole system')).toBe(18_500)
    expect(await sums(page).getByText('Options chosen, in the total').count()).toBe(1)
    expect(app.faults).toEqual([])
  })

  it('by reverse charge charges no VAT and says so', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    const net = await sumOf(page, /^Before VAT$/)
    await press(page, 'How it is priced')
    await page.getByLabel('Who pays the VAT to HMRC').selectOption('reverseCharge')
    await press(page, 'Done')
    await sums(page).getByText('Reverse charge: customer to pay the VAT to HMRC').waitFor()
    expect(await sumOf(page, /^With VAT$/)).toBe(net)
    expect(await sumOf(page, /^VAT that the customer pays/)).toBe(Math.floor((net * 20 + 50) / 100))
  })

  it('keeps the last sums in sight, and says that they are from before, while what is typed is refused', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    const gross = await sumOf(page, /^With VAT$/)
    await fill(page, 'Price before VAT (£)', 'a lot')
    await sums(page).getByText('From before: put right what is wrong first.').waitFor()
    expect(await sumOf(page, /^With VAT$/)).toBe(gross)
    await fill(page, 'Price before VAT (£)', '200')
    await sums(page).getByText('From before').waitFor({ state: 'hidden' })
    await addsUp(page)
  })

  it('hides what is the firm’s own while the customer is looking', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    await page.getByRole('region', { name: 'For your eyes only' }).waitFor()
    await page.getByLabel('The customer is looking').check()
    await page.getByRole('region', { name: 'For your eyes only' }).waitFor({ state: 'detached' })
    const why = page.getByRole('button', { name: /^Why: Thermostatic valve/ }).first()
    await why.click()
    await page
      .getByText(/How many are needed|Pipe on the/)
      .first()
      .waitFor()
    const body = (await page.locator('#main').innerText()).toLowerCase()
    for (const word of ['margin', 'mark-up', 'cost of the packs']) expect(body).not.toContain(word)
  })
})

describe('a reason', () => {
  it('leads from a number of the survey to its field, by keyboard', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    await go(page, /^Why: Travel there and back$/)
    await go(page, /^Go to the survey: Distance one way$/)
    await page.getByLabel('Distance one way (km)').waitFor()
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('site.travelKm')
  })
})

describe('buying', () => {
  it('is worked out when asked for: orders, one supplier alone, and how pipe is cut', async () => {
    app = await openApp()
    const { page } = app
    await openSample(page)
    await press(page, 'Work out what to buy where')
    await page.getByRole('heading', { name: 'From one supplier alone' }).waitFor({ timeout: 40_000 })
    expect(await page.getByRole('table', { name: /^To buy: / }).count()).toBeGreaterThan(0)
    await page
      .getByRole('region', { name: 'Pipe to cut' })
      .getByText(/left over \d+ mm/)
      .waitFor()
  })
})

describe('axe, light and dark', () => {
  it('finds nothing on gaps, changes, pricing and buying', async () => {
    app = await openApp()
    const { page } = app
    await openWithGaps(page)
    await page.getByRole('button', { name: /^Fill it: .*437 W/ }).click()
    await page.getByRole('list', { name: 'Parts found' }).getByRole('button').first().waitFor()
    await page.getByRole('button', { name: /^Let it stand: .*438 W/ }).click()
    await press(page, 'Work out what to buy where')
    await page.getByRole('heading', { name: 'From one supplier alone' }).waitFor({ timeout: 40_000 })
    expect(await found(page)).toEqual([])
    await page.getByRole('button', { name: /^Change: Vent key/ }).click()
    await press(page, 'Choose another item')
    await press(page, 'Keep the change')
    await page.getByRole('alert').waitFor()
    await page.waitForTimeout(500)
    expect(await found(page)).toEqual([])
    await press(page, 'Leave it as it was')
    await press(page, 'How it is priced')
    await press(page, 'Add a discount')
    await page.waitForTimeout(500)
    expect(await found(page)).toEqual([])
  })
})
