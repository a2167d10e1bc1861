import { readFile } from 'node:fs/promises'
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

/** As a supplier sends it: two lines of their own on top, semicolons, a comma before the pence, a code given twice. */
const priceFile = [
  'Invented Supplies;;;',
  'Prices from 1 December;;;',
  'Part No;Description;Pack;Price £',
  '00126;Angled thermostatic valve 15 mm, chrome;1;12,50',
  '00127;Wall plugs 7 mm, bag of 100;100;"1.234,50 /1000"',
  '00128;Lockshield;1;ask us',
  '00126;the same again;1;2,00',
].join('\r\n')

async function bringIn(page: Page, text: string): Promise<void> {
  await follow(page, 'Bring in a price file')
  await page.getByLabel('Supplier', { exact: true }).selectOption({ label: 'Example Radiator Warehouse' })
  await page
    .getByLabel('Price file to bring in')
    .setInputFiles({ name: 'december.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await page.getByRole('heading', { name: 'Understood as' }).waitFor()
  await press(page, 'Compare with my prices')
}

/** How many rows of each kind the comparison counts. */
async function counted(page: Page): Promise<Readonly<Record<string, string>>> {
  const names = await page.locator('dl dt').allInnerTexts()
  const values = await page.locator('dl dd').allInnerTexts()
  return Object.fromEntries(names.map((name, at) => [name, values[at] ?? '']))
}

describe('a price file dropped on the window', () => {
  it('shows what it would change before anything changes, is taken in, and is undone', async () => {
    app = await openApp()
    const { page, faults } = app
    await follow(page, 'Prices')
    await page.getByRole('grid', { name: 'Prices found' }).waitFor()
    await bringIn(page, priceFile)
    await page.getByRole('button', { name: 'Take these prices in' }).waitFor()
    expect(await counted(page)).toMatchObject({
      new: '2',
      changed: '0',
      'not taken': '1',
      'given twice': '1',
    })
    // By hand: 1,234.50 a thousand is 123.45 a hundred, and the plugs come in bags of a hundred.
    await page.getByRole('cell', { name: '£123.45 for 100' }).waitFor()
    await page.getByText('Row 6.').waitFor()
    await press(page, 'Take these prices in')
    await page.getByText('2 new, 0 changed').waitFor()
    await follow(page, 'Find a price')
    await fill(page, 'Code, name or size', '00127')
    await page.getByRole('gridcell', { name: '£123.45' }).waitFor()
    await follow(page, 'What was changed')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await page.getByText('Undone').waitFor()
    await follow(page, 'Find a price')
    await fill(page, 'Code, name or size', '00127')
    await page.getByRole('heading', { name: 'No price has these words' }).waitFor()
    expect(faults).toEqual([])
  })

  it('says in a sentence why a file that is no price file is not taken', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Prices')
    await follow(page, 'Bring in a price file')
    await page
      .getByLabel('Price file to bring in')
      .setInputFiles({ name: 'empty.csv', mimeType: 'text/csv', buffer: Buffer.from('') })
    const alert = page.getByRole('alert', { name: 'The file was not taken in; nothing has changed' })
    await alert.waitFor()
    expect(await alert.getByRole('listitem').innerText()).toContain('is empty')
  })

  it('finds a row by the words of the trade and by keys alone, and shows what it cost', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Prices')
    await fill(page, 'Code, name or size', 'chrome TRV 15mm')
    await page
      .getByRole('gridcell', { name: /^Thermostatic valve.*chrome/ })
      .first()
      .waitFor()
    await page.getByRole('grid', { name: 'Prices found' }).focus()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Prices over time' }).waitFor()
    expect(await page.getByText('In the catalogue it is').innerText()).toContain('Thermostatic valve')
  })
})

const withBreaks = [
  'Code,Description,Pack size,Price,10+,25 off',
  'ZZ1,Pipe clip 22 mm invented,1,0.50,0.45,0.40',
  'ZZ2,Pipe clip 15 mm invented,1,0.40,0.44,0.30',
].join('\n')

/** Goes to the rows of the file above. */
async function findInvented(page: Page): Promise<void> {
  await follow(page, 'Find a price')
  await fill(page, 'Code, name or size', 'invented')
  await page.getByText('2 rows', { exact: true }).waitFor()
}

describe('the rows of a price file that are no items yet', () => {
  it('carry the price breaks of their headings, are changed by keys, made items, written out and undone', async () => {
    app = await openApp()
    const { page, faults } = app
    await follow(page, 'Prices')
    await page.getByRole('grid', { name: 'Prices found' }).waitFor()
    await bringIn(page, withBreaks)
    await page.getByRole('button', { name: 'Take these prices in' }).waitFor()
    expect(await page.getByLabel('Column 5 holds the price from how many packs').inputValue()).toBe('10')
    await page.getByRole('cell', { name: '£0.50 £0.45 from 10 £0.40 from 25' }).last().waitFor()
    await page
      .getByRole('group')
      .filter({ hasText: 'Taken, but look at these' })
      .getByText('From 10 packs a pack costs £0.44, more than the £0.40 for one alone.')
      .waitFor()
    await press(page, 'Take these prices in')
    await page.getByText('2 new, 0 changed').waitFor()

    await findInvented(page)
    const grid = page.getByRole('grid', { name: 'Prices found' })
    await grid.focus()
    await page.keyboard.press('F2')
    const box = page.getByRole('textbox', { name: /^List price of ZZ/ })
    await box.waitFor()
    const code = (await box.getAttribute('aria-label'))?.replace('List price of ', '') ?? ''
    await box.fill('a lot')
    await page.keyboard.press('Enter')
    await page.getByRole('alert').filter({ hasText: '“a lot” is no amount of money' }).waitFor()
    await box.fill('£1,234.50')
    await page.keyboard.press('Tab')
    await page.getByRole('gridcell', { name: '£1,234.50' }).waitFor()
    await page.waitForFunction((before) => {
      const name = document.activeElement?.getAttribute('aria-label') ?? ''
      return name.startsWith('List price of') && name !== `List price of ${before}`
    }, code)
    await page.keyboard.press('Escape')
    await page.keyboard.press('ArrowUp')
    await page.keyboard.type('12.5')
    await page.keyboard.press('Enter')
    await page.getByRole('gridcell', { name: '£12.50' }).waitFor()
    await page.getByText(`${code}: £1,234.50 is now £12.50.`).waitFor()
    await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'grid')

    await press(page, 'Save as a file')
    await page.getByLabel('As', { exact: true }).selectOption({ label: 'a CSV file' })
    await press(page, 'Make the file')
    const link = page.getByRole('link', { name: /^Save prices-found-.*\.csv$/ })
    await link.waitFor()
    const [download] = await Promise.all([page.waitForEvent('download'), link.click()])
    expect(download.suggestedFilename()).toBe('prices-found-2026-11-25.csv')
    const lines = (await readFile(await download.path(), 'utf8')).split(/\r?\n/)
    expect(lines.find((line) => line.startsWith(`${code},`))).toContain(',12.50,')
    await press(page, 'Save as a file')

    await page.getByRole('row', { name: /ZZ1/ }).click()
    await press(page, 'None of these: make it a new item')
    await page.getByLabel('What kind of thing is it?').selectOption({ label: 'Pipe clips' })
    await press(page, 'Add it and link this row')
    await page.getByRole('alert', { name: 'Not saved' }).waitFor()
    await page.getByLabel('Pipe outside (mm)').selectOption('22')
    await press(page, 'Add it and link this row')
    await page.getByText('In the catalogue it is').waitFor()
    await press(page, 'Close')
    await page.getByRole('row', { name: /ZZ1.*yes/ }).waitFor()

    await follow(page, 'What was changed')
    await press(page, `Undo: ${code}: £1,234.50 is now £12.50`)
    await page.getByText('Undone').waitFor()
    await findInvented(page)
    await page.getByRole('gridcell', { name: '£1,234.50' }).waitFor()
    expect(faults.filter((fault) => !/4\d\d/.test(fault))).toEqual([])
  })
})

describe('the catalogue', () => {
  it('is gone through by keys from end to end, and keeps its place beside an item', async () => {
    app = await openApp()
    const { page, faults } = app
    await follow(page, 'Catalogue')
    const list = page.getByRole('list', { name: 'Items', exact: true })
    const first = list.getByRole('link').first()
    await first.waitFor()
    const firstName = await first.innerText()
    await first.focus()
    const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '')
    await page.keyboard.press('End')
    const many = Number((await page.getByText(/^\d+ items$/).innerText()).replace(' items', ''))
    await page.waitForFunction(
      (last) => document.activeElement?.closest('li')?.getAttribute('aria-posinset') === String(last),
      many,
    )
    const lastName = await focused()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: lastName, level: 2 }).waitFor()
    await list.getByRole('link', { name: lastName, exact: true }).waitFor()
    await list.getByRole('link', { name: lastName, exact: true }).focus()
    await page.keyboard.press('Home')
    await page.waitForFunction((name) => document.activeElement?.textContent === name, firstName)
    await press(page, 'Save as a file')
    await press(page, 'Make the file')
    await page.getByRole('link', { name: 'Save catalogue-found-2026-11-25.xlsx' }).waitFor()
    await page.getByText(new RegExp(`^${many} items, \\d+ kB$`)).waitFor()
    expect(faults).toEqual([])
  })

  it('takes a copy of an item as one of our own, whose figures are ours', async () => {
    app = await openApp()
    const { page, faults } = app
    await follow(page, 'Catalogue')
    await fill(page, 'Name, size, code or what you call it', 'lockshield angled 15 chrome')
    await page
      .getByRole('list', { name: 'Items', exact: true })
      .getByRole('link', { name: /^Lockshield.*angled.*chrome/i })
      .first()
      .click()
    await press(page, 'Copy it as one of our own')
    await fill(page, 'Name of the copy', 'Our own lockshield')
    await press(page, 'Make the copy')
    await page.getByRole('heading', { name: 'Our own lockshield', level: 2 }).waitFor()
    await press(page, 'Make it the usual one')
    await page.getByRole('button', { name: 'We usually fit this', pressed: true }).waitFor()
    await press(page, 'Change its figures')
    await fill(page, 'Kv, fully open (m³/h)', 'a lot')
    await press(page, 'Save the figures')
    await page.getByRole('alert', { name: 'Not saved' }).waitFor()
    await fill(page, 'Kv, fully open (m³/h)', '0.7')
    await press(page, 'Save the figures')
    await page.getByRole('button', { name: 'Save the figures' }).waitFor({ state: 'detached' })
    await press(page, 'Retire it')
    await press(page, 'Put it back on the shelf')
    await page.getByRole('button', { name: 'Retire it', exact: true }).waitFor()
    expect(faults.filter((fault) => !/4\d\d/.test(fault))).toEqual([])
  })
})

describe('axe, light and dark', () => {
  it('finds nothing on prices, a file being brought in, suppliers and the catalogue', async () => {
    app = await openApp()
    const { page } = app
    await follow(page, 'Prices')
    await page.getByRole('grid', { name: 'Prices found' }).waitFor()
    await page.getByRole('row').nth(2).click()
    await page.getByRole('heading', { name: 'Prices over time' }).waitFor()
    expect(await found(page)).toEqual([])
    await bringIn(page, priceFile)
    await page.getByRole('button', { name: 'Take these prices in' }).waitFor()
    expect(await found(page)).toEqual([])
    await press(page, 'Take these prices in')
    await page.getByText('2 new').waitFor()
    await follow(page, 'What was changed')
    await page.getByRole('button', { name: /^Undo/ }).waitFor()
    expect(await found(page)).toEqual([])
    await follow(page, 'Suppliers')
    await press(page, 'Add a supplier')
    expect(await found(page)).toEqual([])
    await follow(page, 'Catalogue')
    await page.getByRole('list', { name: 'Items', exact: true }).getByRole('link').first().click()
    await press(page, 'Change its figures')
    expect(await found(page)).toEqual([])
    await follow(page, 'Add an item')
    await page.getByRole('heading', { name: 'A new item' }).waitFor()
    expect(await found(page)).toEqual([])
  })
})
