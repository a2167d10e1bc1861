import type { Locator, Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { fill, press, waitUntilSaved } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

/** The sample's back bedroom: a double panel between two pipes, 1800 mm from the left, under a window board. */
async function openWall(how: Parameters<typeof openApp>[0] = {}): Promise<Page> {
  app = await openApp(how)
  const { page } = app
  await press(page, 'Open the sample job')
  const survey = page.getByRole('navigation', { name: 'The survey' })
  await survey.getByRole('link', { name: /^Back bedroom Single/ }).click()
  await page.getByText('It fits the wall').waitFor()
  return page
}

const radiator = (page: Page) => page.getByRole('button', { name: /^New radiator, centre/ })
const nameOf = (thing: Locator) => thing.getAttribute('aria-label')
const at = (centre: number, bottom: number) =>
  `New radiator, centre ${centre} mm from the left, bottom ${bottom} mm; arrow keys move it`

/** Takes hold of a thing in its middle and goes by so many pixels, without letting go. */
async function take(page: Page, thing: Locator, by: readonly [across: number, down: number]): Promise<void> {
  await thing.scrollIntoViewIfNeeded()
  const box = await thing.boundingBox()
  if (box === null) throw new Error('It is not on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + by[0] / 2, y + by[1] / 2, { steps: 3 })
  await page.mouse.move(x + by[0], y + by[1], { steps: 3 })
}

describe('an emitter on the wall', () => {
  it('is dragged by the mouse, in one step of undo, and says that it is where it was put', async () => {
    const page = await openWall()
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
    await take(page, radiator(page), [90, 0])
    await page.mouse.up()
    const moved = await nameOf(radiator(page))
    expect(moved).not.toBe(at(1800, 150))
    await page.getByText(/^Its centre line is where you put it, \d+ mm from the wall’s left end\.$/).waitFor()
    await waitUntilSaved(page)
    await page.keyboard.press('Control+z')
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
    await page.getByText(/^Its centre line is midway between the pipes/).waitFor()
    await page.keyboard.press('Control+y')
    expect(await nameOf(radiator(page))).toBe(moved)
    await press(page, 'Back between the pipes')
    expect(await nameOf(radiator(page))).toContain('centre 1800 mm')
    expect(app?.faults).toEqual([])
  })

  it('goes back where it was when Escape is pressed in mid drag, and snaps to lines on the way', async () => {
    const page = await openWall()
    await take(page, radiator(page), [60, 0])
    expect(await nameOf(radiator(page))).not.toBe(at(1800, 150))
    await page.keyboard.press('Escape')
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
    await page.mouse.up()
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true)
    await take(page, radiator(page), [3, 0])
    await page.getByText(/^On the line: between the pipes/).waitFor()
    expect(await nameOf(radiator(page))).toContain('centre 1800 mm')
    await page.mouse.up()
  })

  it('is moved by the arrow keys, 1 mm or 10, and all of it is one step', async () => {
    const page = await openWall()
    await radiator(page).focus()
    for (const key of [
      'ArrowRight',
      'ArrowRight',
      'Shift+ArrowRight',
      'ArrowUp',
      'Shift+ArrowUp',
      'ArrowDown',
    ]) {
      await page.keyboard.press(key)
    }
    expect(await nameOf(radiator(page))).toBe(at(1812, 160))
    expect(await page.getByLabel('Its centre from the left (mm)').inputValue()).toBe('1812')
    await page.keyboard.press('Escape')
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
    await page.keyboard.press('Shift+ArrowLeft')
    await page.keyboard.press('Control+z')
    expect(await nameOf(radiator(page))).toBe(at(1800, 150))
  })

  it('keeps clear of old holes once they are measured, and says until then that they are not', async () => {
    const page = await openWall()
    const assumed = page.getByText('The old holes were counted, not measured', { exact: false })
    await assumed.waitFor()
    await press(page, 'Put an old hole there')
    expect(await page.getByText('Give it as a number of millimetres.').count()).toBe(2)
    await page.getByText('The drawing in words', { exact: true }).click()
    const hole = page.getByRole('row', { name: /^Hole A1/ })
    const [x, y] = await hole.getByRole('cell').allInnerTexts()
    await fill(page, 'New place, from the left (mm)', String(parseFloat(x ?? '')))
    await fill(page, 'New place, above the floor (mm)', String(parseFloat(y ?? '')))
    await press(page, 'Put an old hole there')
    await page.getByText(/Hole A1 runs into an old hole, where a plug may not hold/).waitFor()
    await page.getByText(/^1 hole measured: drawn on the wall/).waitFor()
    expect(await assumed.count()).toBe(0)
    await waitUntilSaved(page)
    await press(page, 'Remove old hole 1')
    await assumed.waitFor()
  })

  it('is put by exact numbers beside the drawing', async () => {
    const page = await openWall()
    await fill(page, 'Its centre from the left (mm)', '1625')
    await fill(page, 'Its bottom edge above the floor (mm)', '160')
    expect(await nameOf(radiator(page))).toBe(at(1625, 160))
    await fill(page, 'Its centre from the left (mm)', '16x')
    await page.getByRole('alert', { name: "It can't be set out as it stands" }).waitFor()
    await fill(page, 'Its centre from the left (mm)', '1626')
    await page.getByText('It fits the wall').waitFor()
  })

  it('shows a clash where it is, in words too, and lets go of it again', async () => {
    const page = await openWall()
    const drawing = page.getByRole('group', { name: 'Drawing of Window wall' })
    await radiator(page).focus()
    for (let nth = 0; nth < 12; nth += 1) await page.keyboard.press('Shift+ArrowUp')
    await page.getByText(/It does not fit: The emitter has 30 mm to Window board/).waitFor()
    await drawing.locator('.clash').waitFor({ state: 'attached' })
    await drawing.getByText(/Clash: 30 of 50/).waitFor()
    await page.getByText('The drawing in words', { exact: true }).click()
    const words = page.getByRole('table', { name: 'Things on Window wall' })
    const row = words.getByRole('row', { name: /^Window board/ })
    expect(await row.innerText()).toContain('Clash: 30 mm clear, 50 mm needed')
    await page.keyboard.press('Control+z')
    await page.getByText('It fits the wall').waitFor()
    await drawing.locator('.clash').waitFor({ state: 'detached' })
    expect(await row.innerText()).not.toContain('Clash')
  })
})

describe('the wall itself', () => {
  it('is looked at closer by buttons, keys and Ctrl with the wheel; the bare wheel moves the page', async () => {
    const page = await openWall()
    const drawing = page.getByRole('group', { name: 'Drawing of Window wall' })
    const wide = async () => (await radiator(page).boundingBox())?.width ?? 0
    const whole = await wide()
    await press(page, 'Larger')
    expect(await wide()).toBeGreaterThan(whole * 1.3)
    await press(page, 'Whole wall')
    expect(await wide()).toBeCloseTo(whole, 0)
    await drawing.focus()
    await page.keyboard.press('+')
    expect(await wide()).toBeGreaterThan(whole * 1.1)
    await page.keyboard.press('0')
    const box = await drawing.boundingBox()
    await page.mouse.move((box?.x ?? 0) + 400, (box?.y ?? 0) + 200)
    await page.keyboard.down('Control')
    await page.mouse.wheel(0, -300)
    await page.keyboard.up('Control')
    await page.getByText(/^[\d.]+ times$/).waitFor()
    const before = await page.evaluate(() => window.scrollY)
    await page.mouse.wheel(0, 200)
    await page.waitForFunction((from) => window.scrollY > from, before)
    expect(await page.getByText(/^[\d.]+ times$/).count()).toBe(1)
  })

  it('takes a usual thing, one by four numbers, and one drawn from corner to corner', async () => {
    const page = await openWall()
    await page.getByText('Put something on the wall', { exact: true }).click()
    await press(page, /^Socket pair/)
    await page.getByRole('button', { name: /^Socket pair, .* 146 mm wide, 86 mm high/ }).waitFor()
    await page.getByLabel('Kind of the new thing').selectOption('Shelf')
    await press(page, 'Put it on the wall')
    await page.getByText('Give millimetres, up to 20000.').first().waitFor()
    await fill(page, 'New thing, from the left (mm)', '200')
    await fill(page, 'New thing, above the floor (mm)', '1500')
    await fill(page, 'New thing, width (mm)', '600')
    await fill(page, 'New thing, height (mm)', '25')
    await press(page, 'Put it on the wall')
    await page
      .getByRole('button', {
        name: /^Shelf, 200 mm from the left, 1500 mm above the floor, 600 mm wide, 25 mm high/,
      })
      .waitFor()
    await press(page, 'Draw it on the wall')
    const drawing = page.getByRole('group', { name: 'Drawing of Window wall' })
    await drawing.scrollIntoViewIfNeeded()
    const box = await drawing.boundingBox()
    const [x, y] = [(box?.x ?? 0) + 560, (box?.y ?? 0) + 250]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 60, y + 40, { steps: 4 })
    await page.mouse.up()
    await page.getByRole('button', { name: /^Shelf 2, / }).waitFor()
    await press(page, 'Take Shelf 2 off the wall')
    expect(await page.getByRole('button', { name: /^Shelf 2, / }).count()).toBe(0)
    await waitUntilSaved(page)
    expect(app?.faults).toEqual([])
  })

  it('shows a door’s leaf from above, and lets its hinges change sides', async () => {
    const page = await openWall()
    await page.getByText('Put something on the wall', { exact: true }).click()
    await press(page, /^Door with its leaf/)
    const drawing = page.getByRole('group', { name: 'Drawing of Window wall' })
    await drawing.locator('.leaf').waitFor({ state: 'attached' })
    await page.getByLabel('Hinges', { exact: true }).selectOption('Right')
    await fill(page, 'Opens how far (degrees)', '120')
    await page
      .getByText(/The leaf of Door|in the way of the leaf of Door/)
      .first()
      .waitFor()
    await page.getByLabel('From above').uncheck()
    await drawing.locator('.leaf').waitFor({ state: 'detached' })
    expect(app?.faults).toEqual([])
  })

  it('takes the tiles of a wall and shows their joints', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    const survey = page.getByRole('navigation', { name: 'The survey' })
    await survey.getByRole('link', { name: 'Bathroom', exact: true }).click()
    await press(page, 'Give the size of the tiles')
    await fill(page, 'Tiled up to (mm)', '1200')
    await fill(page, 'Tile width (mm)', '298')
    await page.getByLabel('Laid half over, like bricks').check()
    await survey.getByRole('link', { name: /^Bathroom Single/ }).click()
    const drawing = page.getByRole('group', { name: 'Drawing of Basin wall' })
    await drawing.locator('.tiles').waitFor({ state: 'attached' })
    await page.getByLabel('Tile joints').uncheck()
    await drawing.locator('.tiles').waitFor({ state: 'detached' })
    await waitUntilSaved(page)
    expect(app?.faults).toEqual([])
  })
})

describe('axe on the drawing, light and dark', () => {
  it('finds nothing with a clash, a door and the words open', async () => {
    const page = await openWall()
    await page.getByText('Put something on the wall', { exact: true }).click()
    await press(page, /^Door with its leaf/)
    await page.getByText('The drawing in words', { exact: true }).click()
    await page
      .getByText(/It does not fit/)
      .first()
      .waitFor()
    expect(await found(page)).toEqual([])
  })
})
