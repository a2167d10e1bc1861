import { readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { follow, press, savedPdfText } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

const sampleFile = join(import.meta.dirname, '../../resources/sample/two-rooms.job.json')

describe('the sample job', () => {
  it("opens, and every line and every task says why, a line's reason down to what somebody gave", async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await page.getByRole('heading', { level: 1, name: /^Sample: towel rail/ }).waitFor()
    await follow(page, 'Parts and price')
    await page.getByRole('table', { name: 'Lines: Bathroom' }).waitFor()
    const rows = page.locator('tr[data-line]')
    const count = await rows.count()
    expect(count).toBeGreaterThan(10)
    expect(await rows.getByRole('button', { name: /^Why: / }).count()).toBe(count)
    for (const button of await rows.getByRole('button', { name: /^Why: / }).all()) await button.click()
    const reasons = page.locator('tr[data-line] + tr')
    expect(await reasons.count()).toBe(count)
    for (const reason of await reasons.all()) {
      const given = reason.locator('li:not(:has(ul))')
      expect(await given.count()).toBeGreaterThan(0)
      expect((await given.allTextContents()).every((text) => /: .+/.test(text))).toBe(true)
    }
    const tasks = page.getByRole('table', { name: 'Time, task by task' }).locator('tbody tr')
    const taskCount = await tasks.count()
    expect(taskCount).toBeGreaterThan(5)
    expect(await tasks.getByRole('button', { name: /^Why: / }).count()).toBe(taskCount)
    expect(await page.getByText('NaN').count()).toBe(0)
    expect(app.faults).toEqual([])
  })

  it('prints its pick list and its set-out sheet', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await follow(page, 'Papers')
    await press(page, 'Make the set-out PDF')
    const sheet = await savedPdfText(page)
    expect(sheet.pages).toBeGreaterThanOrEqual(2)
    expect(sheet.text).toContain('Back bedroom')
    await page.reload()
    await press(page, 'Make the pick list PDF')
    const list = await savedPdfText(page)
    expect(list.text).toMatch(/thermostatic valve/i)
  })

  it('comes in as a file, refuses to come in twice, and takes its own place when told to', async () => {
    app = await openApp()
    const { page } = app
    const box = page.locator('input[type=file]')
    await box.setInputFiles(sampleFile)
    await page.getByRole('heading', { level: 1, name: /^Sample: towel rail/ }).waitFor()
    await follow(page, 'Jobs')
    await box.setInputFiles(sampleFile)
    await page
      .getByRole('alert')
      .getByText(/There is a job sample-two-rooms already/)
      .waitFor()
    await press(page, 'Put the file’s job in its place')
    await page.getByRole('heading', { level: 1, name: /^Sample: towel rail/ }).waitFor()
    await follow(page, 'Jobs')
    const entries = page.getByRole('list', { name: 'Jobs' }).getByRole('listitem')
    await entries.first().waitFor()
    expect(await entries.count()).toBe(1)
    await page.getByRole('button', { name: /^More for Sample/ }).click()
    await page.getByRole('menuitem', { name: 'Remove …' }).click()
    await press(page, 'Remove for good')
    await page.getByRole('heading', { name: 'No jobs yet' }).waitFor()
  })

  it('is not taken from a file with a wrong number, and the place in the file is named', async () => {
    app = await openApp()
    const { page } = app
    const wrong = join(tmpdir(), `tailpiece-wrong-${process.pid}.job.json`)
    await writeFile(wrong, (await readFile(sampleFile, 'utf8')).replace('"roomC": 22', '"roomC": "warm"'))
    await page.locator('input[type=file]').setInputFiles(wrong)
    const alert = page.getByRole('alert')
    await alert.getByText(/Room temperature/).waitFor()
    expect(await alert.innerText()).toContain('job.rooms[0].roomC')
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'photo.json', mimeType: 'application/json', buffer: Buffer.from('no') })
    await alert.getByText(/does not hold JSON/).waitFor()
  })
})
