import { afterEach, describe, expect, it } from 'vitest'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import {
  addBedroom,
  addSwap,
  beginJob,
  fill,
  follow,
  giveFirm,
  grossOnScreen,
  press,
  savedPdfText,
  waitUntilSaved,
} from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

describe.each(['UTC', 'Pacific/Auckland'])('a fitter back from a survey, with the clock of %s', (zone) => {
  it('enters the firm, builds a job by hand, sees parts with their reasons, and prints the quote at the same price', async () => {
    app = await openApp({ zone })
    const { page } = app
    await follow(page, 'Your firm')
    await giveFirm(page)
    await follow(page, 'To the jobs')
    await beginJob(page)
    await fill(page, 'Address, line by line', '12 Invented Row\nSampleton')
    await press(page, 'Same address as the customer')
    await fill(page, 'Distance one way (km)', '12')
    await addBedroom(page)
    await addSwap(page)
    await page.getByText('It fits the wall').waitFor()
    await page.getByRole('img', { name: /^Wall 1, 4000 by 2400 mm/ }).waitFor()
    await waitUntilSaved(page)

    await follow(page, 'Parts and price')
    const lines = page.getByRole('table', { name: 'Lines: Back bedroom' })
    await lines
      .getByText(/Double panel radiator/)
      .first()
      .waitFor()
    expect(await lines.getByText(/Thermostatic valve/).count()).toBeGreaterThan(0)
    await lines.getByRole('button', { name: /^Why: Thermostatic valve/ }).click()
    await lines.getByText(/How many are needed/).waitFor()
    const gross = await grossOnScreen(page)
    expect(gross).toMatch(/^£[\d,]+\.\d\d$/)

    await follow(page, 'To the papers')
    await press(page, 'Make the quote PDF')
    const paper = await savedPdfText(page)
    expect(paper.text).toContain(gross)
    expect(paper.text).toContain('Invented Heating')
    expect(paper.text).toContain('Robin Sample')
    expect(paper.text).toContain('25 November 2026')
    expect(paper.text.toLowerCase()).not.toContain('margin')
    expect(await page.getByText(paper.pages === 1 ? /^1 page,/ : `${paper.pages} pages,`).count()).toBe(1)
    expect(app.faults).toEqual([])
  })

  it('finds the job again as it was left, after the window is opened anew', async () => {
    app = await openApp({ zone })
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await waitUntilSaved(page)
    await page.reload()
    await page.getByLabel('Name of the room', { exact: true }).waitFor()
    expect(await page.getByLabel('Window from the left (mm)').inputValue()).toBe('1400')
    await follow(page, 'Jobs')
    const entry = page.getByRole('list', { name: 'Jobs' }).getByRole('listitem')
    await entry.getByText(/1 room, 0 swaps/).waitFor()
  })
})

describe('a quote that is not ready to go out', () => {
  it('leads to the firm when nobody has said who it is from, and back again', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await addSwap(page)
    await follow(page, 'Papers')
    await page.getByRole('link', { name: 'Give your firm’s details' }).waitFor()
    expect(await page.getByRole('button', { name: 'Make the quote PDF' }).count()).toBe(0)
    await follow(page, 'Give your firm’s details')
    await giveFirm(page)
    await follow(page, 'Back to the quote')
    await press(page, 'Make the quote PDF')
    expect((await savedPdfText(page)).text).toContain('Invented Heating')
    expect(app.faults).toEqual([])
  })

  it('shows what the catalogue cannot supply, and waits until the gap is let stand in writing', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    const survey = page.getByRole('navigation', { name: 'The survey' })
    await survey.getByRole('link', { name: /^Bathroom Single/ }).click()
    await fill(page, 'Electric element (W)', '900')
    await waitUntilSaved(page)
    await follow(page, 'Papers')
    await press(page, 'Make the quote PDF')
    await page
      .getByRole('alert', { name: 'Not made' })
      .getByText(/no heating element/)
      .waitFor()
    await follow(page, 'Parts and price')
    await page.getByRole('button', { name: /^Let it stand: .*900 W/ }).click()
    await press(page, 'Keep the reason')
    await page.getByText('Say in a few words why').waitFor()
    await fill(page, 'It may stand, because', 'The electrician brings it.')
    await press(page, 'Keep the reason')
    await page.getByRole('note', { name: 'Every gap is filled or let stand' }).waitFor()
    await follow(page, 'Papers')
    await press(page, 'Make the quote PDF')
    expect((await savedPdfText(page)).pages).toBeGreaterThan(0)
  })
})
