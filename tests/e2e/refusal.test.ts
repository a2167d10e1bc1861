import { afterEach, describe, expect, it } from 'vitest'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { addBedroom, beginJob, fill, follow, press, waitUntilSaved } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

async function described(page: OpenApp['page'], label: string): Promise<string> {
  const box = page.getByLabel(label, { exact: true })
  const ids = ((await box.getAttribute('aria-describedby')) ?? '').split(' ').filter(Boolean)
  const said = await Promise.all(ids.map((id) => page.locator(`[id="${id}"]`).innerText()))
  return said.join(' ')
}

describe('a bad number', () => {
  it('is answered beside its field and on top, is not saved, and is saved again once it is right', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await waitUntilSaved(page)
    await fill(page, 'Width (mm)', '25000')
    const top = page.getByRole('alert', { name: 'Not saved until this is put right' })
    await top.getByText(/Width \(mm\) must be at most 20000; it was 25000\./).waitFor()
    expect(await described(page, 'Width (mm)')).toContain('must be at most 20000')
    expect(await page.getByLabel('Width (mm)', { exact: true }).getAttribute('aria-invalid')).toBe('true')
    await page.getByText(/^Not saved: Width/).waitFor()

    await follow(page, 'The system')
    await top.getByRole('button', { name: /Width \(mm\) must be/ }).click()
    await page.waitForFunction(() => document.activeElement?.id === 'rooms[0].walls[0].widthMm')

    await fill(page, 'Width (mm)', '3600')
    await waitUntilSaved(page)
    await page.getByRole('alert').waitFor({ state: 'detached' })
  })

  it('may be no number at all: it stays as typed, and the field says so', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await follow(page, 'The system')
    await fill(page, 'Flow temperature (°C)', 'abc')
    await page.getByText(/^Not saved: Flow temperature/).waitFor()
    expect(await described(page, 'Flow temperature (°C)')).toContain('must be a number, not "abc"')
    expect(await page.getByLabel('Flow temperature (°C)').inputValue()).toBe('abc')
    await press(page, 'Undo')
    expect(await page.getByLabel('Flow temperature (°C)').inputValue()).toBe('60')
    await waitUntilSaved(page)
  })

  it('is asked for again when a job is begun without a name', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'New job')
    await press(page, 'Begin the job')
    await page
      .getByText(/must be filled in/)
      .first()
      .waitFor()
    expect(await described(page, 'What the job is')).toContain('must be filled in')
    expect(await described(page, 'Customer')).toContain('must be filled in')
  })
})
