/** From a stroke of a key to the repainted total, in a house of 30 rooms and 30 swaps. It prints; it holds nothing to any of it. */
import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import { launchBrowser } from '../browser.ts'

const howMany = 30
const host = process.env['HOST'] ?? join(import.meta.dirname, '../../out/main/host.js')
const sample = jobSchema.parse(
  JSON.parse(await readFile(join(import.meta.dirname, '../../resources/sample/two-rooms.job.json'), 'utf8')),
)
const at = Array.from({ length: howMany }, (_, index) => index)
const big = {
  ...sample,
  title: 'Thirty rooms',
  options: sample.options?.map((option) => ({ ...option, chosen: true })),
  rooms: at.map((nth) => ({ ...sample.rooms[nth % 2], roomId: `room-${nth}`, name: `Room ${nth + 1}` })),
  swaps: at.map((nth) => ({ ...sample.swaps[nth % 2], swapId: `swap-${nth}`, roomId: `room-${nth}` })),
}

/** Each stroke: from the key's own time stamp to the frame after the total on the screen has changed. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const took: number[] = []
    const events: number[] = []
    let pressed = 0
    Object.assign(window, { took, events })
    window.addEventListener('keydown', (event) => (pressed = event.timeStamp), { capture: true })
    new MutationObserver(() => {
      const from = pressed
      if (from === 0) return
      pressed = 0
      requestAnimationFrame(() => {
        const channel = new MessageChannel()
        channel.port1.addEventListener('message', () => took.push(performance.now() - from))
        channel.port1.start()
        channel.port2.postMessage(null)
      })
    }).observe(document.querySelector('[data-totals]') ?? document.body, {
      subtree: true,
      characterData: true,
      childList: true,
    })
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (entry.name === 'keydown') events.push(entry.duration)
    }).observe({ type: 'event', durationThreshold: 16, buffered: false } as PerformanceObserverInit)
  })
}

function told(name: string, figures: readonly number[]): void {
  const sorted = figures.toSorted((a, b) => a - b)
  const share = (part: number) =>
    (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0).toFixed(1)
  console.log(
    `${name}: ${sorted.length} times, p50 ${share(0.5)} ms, p95 ${share(0.95)} ms, most ${share(1)} ms`,
  )
}

async function typed(page: Page, box: ReturnType<Page['locator']>, name: string): Promise<void> {
  await watch(page)
  await box.focus()
  for (let nth = 0; nth < 40; nth += 1) {
    await page.keyboard.press('Control+a')
    await page.evaluate(() => new Promise((next) => setTimeout(next, 60)))
    await page.keyboard.press(String((nth % 9) + 1))
    await page.evaluate(() => new Promise((next) => setTimeout(next, 120)))
  }
  const { took, events } = await page.evaluate(() => {
    const seen = window as unknown as { readonly took: readonly number[]; readonly events: readonly number[] }
    return { took: [...seen.took], events: [...seen.events] }
  })
  told(`${name}, key to repainted total`, took)
  told(`${name}, event timing of keydown (8 ms steps, from 16 ms on)`, events)
}

const folder = await mkdtemp(join(tmpdir(), 'tailpiece-keys-'))
const child = spawn(process.execPath, [host, '--data', folder], {
  env: { ...process.env, TAILPIECE_NO_BROWSER: '1', TAILPIECE_TODAY: '2026-11-25' },
  stdio: ['ignore', 'pipe', 'inherit'],
})
const address = await new Promise<string>((found) => {
  let printed = ''
  child.stdout.on('data', (part: Buffer) => {
    printed += part.toString()
    const where = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(printed)?.[0]
    if (where !== undefined) found(where)
  })
})
const browser = await launchBrowser()
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
  await page.goto(address)
  await page.locator('input[type=file]').setInputFiles({
    name: 'big.job.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(big)),
  })
  await page.getByRole('link', { name: 'Parts and price', exact: true }).click()
  await page.getByRole('table', { name: 'Lines: Room 1', exact: true }).waitFor({ timeout: 60_000 })
  await page.evaluate(() => new Promise((next) => setTimeout(next, 3000)))
  await typed(page, page.getByLabel('Price before VAT (£)').first(), "An option's price")
  await page.getByRole('button', { name: 'How it is priced' }).click()
  await page.getByRole('button', { name: 'Add a discount' }).click()
  await page.evaluate(() => new Promise((next) => setTimeout(next, 2500)))
  await typed(page, page.getByRole('dialog').getByLabel('Share (%)'), 'A discount')
  await page.getByRole('dialog').getByRole('combobox', { name: 'All other parts' }).selectOption('markUp')
  await page.evaluate(() => new Promise((next) => setTimeout(next, 2500)))
  await typed(
    page,
    page.getByRole('dialog').getByLabel('Mark-up on all other parts (%)'),
    'A mark-up of all parts',
  )
} finally {
  await browser.close()
  child.kill('SIGTERM')
  await rm(folder, { recursive: true, force: true })
}
