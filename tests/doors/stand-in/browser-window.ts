import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import { deserialize, serialize } from 'node:v8'
import type { Page, Route } from 'playwright-core'
import { launchBrowser } from '../../browser.ts'
import { app, atEnd, openWindows } from './app.ts'
import { inPage } from './in-page.ts'
import { blocked, handlers, schemes } from './state.ts'
import { preventable, strict } from './strict.ts'

export type WebPreferences = { readonly preload: string } & Readonly<Record<string, unknown>>

/** Crossing between processes: plain data only. A function throws; a class instance loses its methods. */
const crossing = (value: unknown): unknown => deserialize(serialize(value))

class WebContents extends EventEmitter {
  page: Page | null = null
  openHandler: (() => { readonly action: string }) | null = null
  setWindowOpenHandler(handler: () => { readonly action: string }) {
    this.openHandler = handler
  }
  send(channel: string, ...args: readonly unknown[]) {
    const message = { channel, args: crossing(args) }
    void this.page?.evaluate((told) => {
      window.dispatchEvent(new CustomEvent('stand-in-told', { detail: told }))
    }, message)
  }
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = strict('webContents', new WebContents())
  readonly webPreferences: WebPreferences

  constructor({ webPreferences }: { readonly webPreferences: WebPreferences }) {
    super()
    this.webPreferences = webPreferences
    openWindows.add(this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  static getAllWindows() {
    return [...openWindows]
  }
  async loadURL(url: string) {
    const page = await newPage(this)
    this.webContents.page = page
    await page.goto(toPage(url))
    this.emit('ready-to-show')
    process.send?.({ loaded: url })
  }
  show() {}
  hide() {}
  focus() {}
  restore() {}
  isMinimized() {
    return false
  }
  /** Says whether the window is gone; it stays when the program prevents that. */
  async close(): Promise<boolean> {
    const event = preventable()
    this.emit('close', event)
    if (!event.prevented) await this.#gone()
    return !event.prevented
  }
  destroy() {
    void this.#gone()
  }
  async #gone() {
    openWindows.delete(this)
    await this.webContents.page?.close()
    if (openWindows.size === 0) app.emit('window-all-closed')
  }
}

/** app://tailpiece/x is http://tailpiece.app.localhost/x in Chromium, which trusts localhost; it never reaches a wire. */
const toPage = (url: string) => url.replace(/^([a-z]+):\/\/([^/]+)/, 'http://$2.$1.localhost')
const fromPage = (url: string) => url.replace(/^http:\/\/([^/]+)\.([a-z]+)\.localhost/, '$2://$1')

async function newPage(window: BrowserWindow): Promise<Page> {
  const browser = await launchBrowser()
  atEnd.push(() => browser.close())
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
  page.on('pageerror', (error) => console.error('In the window:', error))
  await page.route('**/*', (route) => serve(route, window.webContents))
  await page.exposeBinding('standInInvoke', async ({ frame }, channel: string, args: unknown[]) => {
    const parent = frame.parentFrame()
    const senderFrame = { url: fromPage(frame.url()), parent: parent === null ? null : {} }
    return crossing(await handlers.get(channel)?.({ senderFrame }, ...(crossing(args) as unknown[])))
  })
  const preload = readFileSync(window.webPreferences.preload, 'utf8')
  await page.addInitScript(
    `if (window === window.top) ((require) => {${preload}\n})((${inPage.toString()})())`,
  )
  return page
}

/** Serves what the program serves; a page that would leave first asks the program, as Electron does. */
async function serve(route: Route, contents: EventEmitter): Promise<void> {
  const request = route.request()
  const url = fromPage(request.url())
  const answer = schemes.get(new URL(url).protocol.slice(0, -1))
  if (answer === undefined || answer === null) {
    const leaves = request.isNavigationRequest() && request.frame().parentFrame() === null
    const event = preventable()
    if (leaves) contents.emit('will-navigate', event, url)
    blocked.push(`${event.prevented ? 'prevented' : 'unknown'} ${url}`)
    // An answer without content leaves the page where it is.
    return event.prevented ? route.fulfill({ status: 204 }) : route.abort()
  }
  const response = await answer(new Request(url, { method: request.method() }))
  const headers = Object.fromEntries(response.headers)
  await route.fulfill({
    status: response.status,
    headers,
    body: Buffer.from(await response.arrayBuffer()),
  })
}
