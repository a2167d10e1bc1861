import { readFile } from 'node:fs/promises'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { cleanJpeg } from '../../src-main/desk/photos/clean-jpeg.ts'
import { exifWithPlace } from '../unit/desk/photos/jpeg-for-tests.ts'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { addBedroom, beginJob, fill, follow, press, waitUntilSaved } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const heat = (page: Page) => page.getByRole('status', { name: 'Heat the room needs' })

async function wattsShown(page: Page): Promise<number> {
  const text = await heat(page).innerText()
  const found = /([\d,]+) W\s+([\d,]+) BTU\/h/.exec(text)
  if (found === null) throw new Error(`No watts in: ${text}`)
  const [watts, btu] = [found[1], found[2]].map((one) => Number((one ?? '').replaceAll(',', '')))
  // One watt is 3.412142 BTU an hour (exact definitions); both are shown whole.
  expect(Math.abs((btu ?? 0) - (watts ?? 0) * 3.412142)).toBeLessThan(3)
  return watts ?? 0
}

describe('a room entered quickly', () => {
  it('shows its heat as it is typed, opens as elements, takes a U-value, and is there again later', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await follow(page, 'Add a room')
    await heat(page).getByText('Give the sizes and the age of the house').waitFor()
    await press(page, 'Add the room')
    await page.getByText('The room wants a name, such as Back bedroom.').waitFor()
    await page.getByText('Length (m) is missing; give a number.').waitFor()
    await fill(page, 'Name of the room', 'Lounge')
    await page.getByLabel('Used as', { exact: true }).selectOption('Living room')
    await fill(page, 'Length (m)', '4')
    await fill(page, 'Width (m)', '3')
    await page.getByLabel('Outside walls', { exact: true }).selectOption('Two')
    await page.getByLabel('Age of the house', { exact: true }).selectOption('1930 to 1949')
    const oneWindow = await wattsShown(page)
    await fill(page, 'Windows of usual size', '2')
    expect(await wattsShown(page)).toBeGreaterThan(oneWindow)
    await page.getByRole('button', { name: 'Why: the heat the room needs' }).click()
    await page
      .getByText(/RdSAP 2009 \(version 9\.90\), table S6/)
      .first()
      .waitFor({ state: 'attached' })

    await press(page, 'Add the room')
    await page.getByRole('heading', { name: 'Heat needed, by quick entry' }).waitFor()
    const before = await wattsShown(page)
    await page.getByLabel('Glazing', { exact: true }).selectOption('Single glazing')
    const single = await wattsShown(page)
    expect(single).toBeGreaterThan(before)
    await press(page, 'Undo')
    await expect.poll(() => wattsShown(page)).toBe(before)
    await press(page, 'Show every element')
    await page.getByRole('heading', { name: 'Heat needed, element by element' }).waitFor()
    expect(await wattsShown(page)).toBe(before)
    await press(page, 'Find it: the U-value of Outside walls')
    const dialog = page.getByRole('dialog')
    await dialog.getByLabel('Built as').selectOption('Cavity, filled')
    await dialog.getByLabel('Age of the house').selectOption('1930 to 1949')
    await dialog.getByText('0.5 W/m²K').waitFor()
    await dialog.getByRole('button', { name: 'Take this U-value' }).click()
    await dialog.waitFor({ state: 'hidden' })
    expect(await page.getByLabel('U-value of Outside walls (W/m²K)').inputValue()).toBe('0.5')
    const filled = await wattsShown(page)
    expect(filled).toBeLessThan(before)
    await waitUntilSaved(page)
    await page.reload()
    await page.getByRole('heading', { name: 'Heat needed, element by element' }).waitFor()
    expect(await wattsShown(page)).toBe(filled)
    await press(page, 'Another room like this')
    await expect.poll(() => page.getByLabel('Name of the room').inputValue()).toBe('Lounge (copy)')
    expect(app.faults).toEqual([])
  })

  it('may still be a rough guess, which says so', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await follow(page, 'Add a room')
    await fill(page, 'Name of the room', 'Store')
    await fill(page, 'Length (m)', '2')
    await fill(page, 'Width (m)', '2')
    await press(page, 'Add it with a rough guess by volume')
    await page.getByRole('heading', { name: 'Heat needed, by a rough guess' }).waitFor()
    expect(await heat(page).getByText('Rough: a guess by volume.').isVisible()).toBe(true)
  })
})

/** A picture of 60 by 40 dots, left half red and right half blue, as the browser writes it. */
async function picture(page: Page): Promise<Buffer> {
  const url = await page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = 60
    canvas.height = 40
    const pen = canvas.getContext('2d')
    if (pen === null) throw new Error('No pen')
    pen.fillStyle = '#ff0000'
    pen.fillRect(0, 0, 30, 40)
    pen.fillStyle = '#0000ff'
    pen.fillRect(30, 0, 30, 40)
    return canvas.toDataURL('image/jpeg', 0.95)
  })
  return Buffer.from(url.split(',')[1] ?? '', 'base64')
}

/** The size of a shown picture, and the colour near its top. */
async function shownPhoto(page: Page) {
  return page
    .getByRole('button', { name: 'Open Photo 1 large' })
    .locator('img')
    .evaluate(async (element) => {
      const image = element as HTMLImageElement
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = image.naturalWidth
      canvas.height = image.naturalHeight
      const pen = canvas.getContext('2d')
      if (pen === null) throw new Error('No pen')
      pen.drawImage(image, 0, 0)
      const [red = 0, , blue = 0] = pen.getImageData(20, 8, 1, 1).data
      const { naturalWidth, naturalHeight, src } = image
      return {
        naturalWidth,
        naturalHeight,
        top: red > blue ? 'red' : 'blue',
        base64: src.split(',')[1] ?? '',
      }
    })
}

describe('a photo of a room', () => {
  it('is turned as the camera was held, loses place and all else, is captioned, and is removed', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await waitUntilSaved(page)
    const plain = await picture(page)
    const taken = Buffer.concat([plain.subarray(0, 2), Buffer.from(exifWithPlace()), plain.subarray(2)])
    expect(cleanJpeg(taken)).toMatchObject({ ok: false })
    await page.locator('input[type=file]').setInputFiles([
      { name: 'window.jpg', mimeType: 'image/jpeg', buffer: taken },
      { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') },
    ])
    const refused = page.getByRole('alert', { name: 'Not every photo was kept' })
    await refused.getByText('notes.jpg: It can’t be read as a picture: take a JPEG, PNG or WebP.').waitFor()
    await page.getByRole('button', { name: 'Open Photo 1 large' }).waitFor()
    const photo = await shownPhoto(page)
    // Orientation 6: a quarter turn clockwise, so the left edge is on top (EXIF 2.3, tag 0x0112).
    expect(photo).toMatchObject({ naturalWidth: 40, naturalHeight: 60, top: 'red' })
    expect(cleanJpeg(Buffer.from(photo.base64, 'base64'))).toEqual({
      ok: true,
      value: { widthPx: 40, heightPx: 60 },
    })
    await fill(page, 'What photo 1 shows', 'Pipes under the window')
    await page.getByRole('button', { name: 'Open Pipes under the window large' }).click()
    await page.getByRole('dialog').getByRole('img', { name: 'Pipes under the window' }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    await press(page, 'Remove Pipes under the window')
    await press(page, 'Remove the photo')
    await page.getByRole('list', { name: 'Photos of this room' }).waitFor({ state: 'detached' })
    expect(app.faults).toEqual([])
  })
})

describe('the survey form', () => {
  it('is made blank where a room is added, and with what the job says among the papers', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await follow(page, 'Add a room')
    await press(page, 'Blank survey form (PDF)')
    const blank = await savedForm(page)
    expect(blank).toContain('Room 2: the swap')
    expect(blank).not.toContain('Robin Sample')
    await follow(page, 'Papers')
    await press(page, 'Survey form of this job (PDF)')
    expect(await savedForm(page)).toContain('Robin Sample')
  })
})

async function savedForm(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Save the survey form' }).click(),
  ])
  const reading = getDocument({ data: new Uint8Array(await readFile(await download.path())) })
  const pdf = await reading.promise
  const texts: string[] = []
  for (let nth = 1; nth <= pdf.numPages; nth += 1) {
    const { items } = await (await pdf.getPage(nth)).getTextContent()
    texts.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
  }
  await reading.destroy()
  return texts.join(' ').replace(/\s+/g, ' ')
}

/** Board and 140 mm of mineral wool with 15 % of studs through it. */
async function studWall(page: Page): Promise<void> {
  await fill(page, 'Layer 1: thickness (mm)', '12.5')
  await fill(page, 'Layer 1: conductivity (W/mK)', '0.25')
  await press(page, 'Add a layer')
  await fill(page, 'Layer 2: thickness (mm)', '140')
  await fill(page, 'Layer 2: conductivity (W/mK)', '0.038')
  await press(page, 'Timber goes through layer 2')
  // By hand (ISO 6946, combined method): surfaces 0.17, board 0.05, wool 3.684, timber 1.077 m2K/W. Upper: 1 / (0.85 / 3.904 + 0.15 /
  // 1.297) = 3.000. Lower: 0.22 + 1 / (0.85 / 3.684 + 0.15 / 1.077) = 2.923.
  await page.getByText(/upper 3\.000 m²K\/W .*, lower 2\.923 m²K\/W/).waitFor()
}

describe('axe on the survey, light and dark', () => {
  it('finds nothing while a room is added, nor in quick entry and photos', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await follow(page, 'Add a room')
    await press(page, 'Add the room')
    await page.getByText('The room wants a name, such as Back bedroom.').waitFor()
    expect(await found(page)).toEqual([])
    await addBedroom(page)
    await waitUntilSaved(page)
    await page
      .locator('input[type=file]')
      .setInputFiles([{ name: 'wall.jpg', mimeType: 'image/jpeg', buffer: await picture(page) }])
    await page.getByRole('button', { name: 'Open Photo 1 large' }).waitFor()
    expect(await found(page)).toEqual([])
    await page.getByRole('button', { name: 'Open Photo 1 large' }).click()
    await page.getByRole('dialog').waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing in elements and in the three ways to a U-value', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await press(page, 'Show every element')
    await press(page, 'Find it: the U-value of Windows')
    const way = page.getByRole('dialog').getByLabel('How to find it')
    for (const name of [
      'From the tables, by the age of the house',
      'From its layers',
      'A floor on the ground',
    ]) {
      await way.selectOption(name)
      if (name === 'From its layers') await studWall(page)
      expect(await found(page)).toEqual([])
    }
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    expect(await found(page)).toEqual([])
  })
})
