import { afterEach, describe, expect, it } from 'vitest'
import { found } from './axe-finds.ts'
import { openApp } from './open-app.ts'
import type { OpenApp } from './open-app.ts'
import { addBedroom, addSwap, beginJob, fill, follow, press } from './steps.ts'

let app: OpenApp | null = null
afterEach(async () => {
  await app?.close()
  app = null
})

describe('axe, light and dark', () => {
  it('finds nothing on the list of jobs, the firm and a refused form', async () => {
    app = await openApp()
    const { page } = app
    expect(await found(page)).toEqual([])
    await press(page, 'New job')
    await press(page, 'Begin the job')
    await page
      .getByText(/must be filled in/)
      .first()
      .waitFor()
    expect(await found(page)).toEqual([])
    await follow(page, 'Your firm')
    await page.getByLabel('Name of the firm').waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing on any page of the survey, nor beside a refused number', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    const survey = page.getByRole('navigation', { name: 'The survey' })
    for (const name of ['Customer and site', 'The system', 'Bathroom', 'Add a room', 'Add a swap']) {
      await survey.getByRole('link', { name, exact: true }).first().click()
      expect(await found(page), name).toEqual([])
    }
    await survey.getByRole('link', { name: /^Back bedroom Single/ }).click()
    await page.getByText('It fits the wall').waitFor()
    await press(page, 'Choose another emitter')
    await page.getByRole('list', { name: 'Emitters found' }).waitFor()
    await fill(page, 'Bottom edge above the floor (mm)', '-4')
    await page
      .getByText(/^Not saved/)
      .first()
      .waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing on parts and price with reasons open, nor on the papers', async () => {
    app = await openApp()
    const { page } = app
    await press(page, 'Open the sample job')
    await follow(page, 'Parts and price')
    await page.getByText('It fits the wall').first().waitFor()
    await page
      .getByRole('button', { name: /^Why: Thermostatic valve/ })
      .first()
      .click()
    expect(await found(page)).toEqual([])
    await follow(page, 'Papers')
    await press(page, 'Make the quote PDF')
    await page.getByRole('link', { name: 'Save a copy', exact: true }).waitFor()
    expect(await found(page)).toEqual([])
  })

  it('finds nothing in the question before a removal, nor where the firm or a swap is still wanted', async () => {
    app = await openApp()
    const { page } = app
    await beginJob(page)
    await addBedroom(page)
    await press(page, 'Remove this room')
    await page.getByRole('dialog').waitFor()
    expect(await found(page)).toEqual([])
    await press(page, 'Keep it')
    await follow(page, 'Parts and price')
    await page.getByRole('heading', { name: 'Nothing to price yet' }).waitFor()
    expect(await found(page)).toEqual([])
    await addSwap(page)
    await follow(page, 'Papers')
    await page.getByRole('note', { name: 'Who is the quote from?' }).waitFor()
    expect(await found(page)).toEqual([])
  })
})
