import { readFile } from 'node:fs/promises'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Download, Page } from 'playwright-core'

/** Fills a box that is found by its label. */
export async function fill(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).fill(text)
}

/** Presses a button that is found by its name. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click()
}

/** Follows a link that is found by its name. */
export async function follow(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name, exact: true }).click()
}

/** Gives the firm's details on its screen. */
export async function giveFirm(page: Page): Promise<void> {
  await fill(page, 'Name of the firm', 'Invented Heating')
  await fill(page, 'Telephone', '01632 960100')
  await fill(page, 'Email', 'office@example.com')
  await fill(page, 'Address, line by line', 'Unit 1, Example Yard\nSampleton')
  await fill(page, 'Your terms, as they are printed', 'The balance is due on completion.')
  await press(page, 'Save the firm')
  await page.getByRole('note', { name: 'The firm is saved' }).waitFor()
}

/** Begins a job from the list of jobs. */
export async function beginJob(page: Page): Promise<void> {
  await press(page, 'New job')
  await fill(page, 'What the job is', 'Bigger radiator for the back bedroom')
  await fill(page, 'Customer', 'Robin Sample')
  await press(page, 'Begin the job')
  await page.getByRole('heading', { name: 'The customer' }).waitFor()
}

/** Puts a bedroom of 4.0 by 3.0 m with a window into the job. */
export async function addBedroom(page: Page): Promise<void> {
  await follow(page, 'Add a room')
  await fill(page, 'Name of the room', 'Back bedroom')
  await fill(page, 'Length (m)', '4')
  await fill(page, 'Width (m)', '3')
  await page.getByLabel('Age of the house', { exact: true }).selectOption('1930 to 1949')
  await press(page, 'Add the room')
  await page.getByRole('heading', { name: 'The room', exact: true }).waitFor()
  await press(page, 'Add something in the way')
  await fill(page, 'Window from the left (mm)', '1400')
  await fill(page, 'Window above the floor (mm)', '1000')
  await fill(page, 'Width of Window (mm)', '1200')
}

/** Puts a swap into the job: an old radiator for a double panel, on two pipes from the floor. */
export async function addSwap(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Add a swap', exact: true }).last().click()
  await fill(page, 'Width of the old one (mm)', '1000')
  await fill(page, 'Height of the old one (mm)', '600')
  await fill(page, 'Left pipe, from the left (mm)', '1465')
  await fill(page, 'Right pipe, from the left (mm)', '2535')
  await fill(page, 'Find an emitter', 'double 600 1000')
  await page.getByRole('list', { name: 'Emitters found' }).getByText('600 high x 1000 wide').first().waitFor()
  await page
    .getByRole('button', { name: /^Choose: Double panel radiator.*600 high x 1000 wide/ })
    .first()
    .click()
  await page.getByRole('heading', { name: 'On the wall' }).waitFor()
}

/** Waits until the job on the screen is in the data file. */
export async function waitUntilSaved(page: Page): Promise<void> {
  await page.getByText(/^Saved at \d\d:\d\d$/).waitFor()
}

/** The sum that a customer pays, as the screen shows it. */
export async function grossOnScreen(page: Page): Promise<string> {
  const sums = page.getByRole('complementary', { name: 'What it comes to' })
  await sums.getByText('Working it out again').waitFor({ state: 'hidden' })
  return sums
    .locator('div', { has: page.getByText('With VAT', { exact: true }) })
    .last()
    .locator('dd')
    .innerText()
}

/** The text of a PDF that the page's own link saves. */
export async function savedPdfText(page: Page): Promise<PdfText> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Save a copy', exact: true }).first().click(),
  ])
  return pdfTextOf(download)
}

type PdfText = { readonly pages: number; readonly text: string }

/** The text of a PDF that was saved. */
export async function pdfTextOf(download: Download): Promise<PdfText> {
  const reading = getDocument({ data: new Uint8Array(await readFile(await download.path())) })
  const pdf = await reading.promise
  const texts: string[] = []
  for (let nth = 1; nth <= pdf.numPages; nth += 1) {
    const { items } = await (await pdf.getPage(nth)).getTextContent()
    texts.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
  }
  const pages = pdf.numPages
  await reading.destroy()
  return { pages, text: texts.join(' ').replace(/\s+/g, ' ') }
}
