import type { Page } from 'playwright-core'

/** How fast a person types and presses keys who looks at a sheet of paper beside it. */
export const keysPerSecond = 3

/** A person at the keyboard, with every key that goes down counted and every pause to read or think added up. */
export type Hands = {
  /** Presses one key or a chord such as Control+k, so many times. */
  readonly press: (key: string, times?: number) => Promise<void>
  readonly type: (text: string) => Promise<void>
  /** Looks and thinks for so many seconds. Nothing waits: the seconds are added up. */
  readonly think: (seconds: number) => void
  /** Waits until the focus is on the thing of this name: what the person sees before going on. */
  readonly see: (name: string | RegExp) => Promise<void>
  /** Presses the tab key until the focus is on the thing of this name. */
  readonly tabTo: (name: string, most?: number) => Promise<void>
  readonly keys: () => number
  readonly thinkingS: () => number
  /** Keys at their speed, and the pauses. */
  readonly seconds: () => number
}

/** The names under which the thing in focus is known: what it is labelled with, and what stands on it. */
async function namesInFocus(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const focus = document.activeElement
    if (focus === null) return []
    const labels =
      focus instanceof HTMLInputElement || focus instanceof HTMLSelectElement ? focus.labels : null
    const area = focus instanceof HTMLTextAreaElement ? focus.labels : null
    const names = [focus.getAttribute('aria-label'), labels?.[0]?.textContent, area?.[0]?.textContent]
    return [...names, focus === document.body ? 'nothing' : focus.textContent, `#${focus.id}`]
      .map((name) => (name ?? '').trim())
      .filter((name) => name !== '')
  })
}

const isNamed = (names: readonly string[], wanted: string | RegExp) =>
  names.some((name) => (typeof wanted === 'string' ? name === wanted : wanted.test(name)))

const everyMs = 50
const patienceMs = 20_000

async function seen(page: Page, name: string | RegExp): Promise<void> {
  const until = Date.now() + patienceMs
  for (;;) {
    const names = await namesInFocus(page)
    if (isNamed(names, name)) return
    if (Date.now() > until) throw new Error(`The focus is not on ${name} but on ${names.join(' / ')}.`)
    await page.waitForTimeout(everyMs)
  }
}

/** A capital letter, or a sign above another, takes the shift key as well. */
const keysOf = (letter: string) => (/[A-Z!"£$%^&*()_+{}:@~<>?|]/.test(letter) ? 2 : 1)

/** Hands on the keyboard of a page; they have no mouse. */
export function handsOn(page: Page): Hands {
  let keys = 0
  let thinkingS = 0
  const press = async (key: string, times = 1) => {
    for (let nth = 0; nth < times; nth += 1) await page.keyboard.press(key)
    keys += times * key.split('+').length
  }
  return {
    press,
    type: async (text) => {
      await page.keyboard.type(text)
      keys += Array.from(text).reduce((sum, letter) => sum + keysOf(letter), 0)
    },
    think: (seconds) => {
      thinkingS += seconds
    },
    see: (name) => seen(page, name),
    tabTo: async (name, most = 40) => {
      for (let tabs = 0; tabs < most; tabs += 1) {
        await press('Tab')
        if (isNamed(await namesInFocus(page), name)) return
      }
      throw new Error(`${most} presses of the tab key do not lead to ${name}.`)
    },
    keys: () => keys,
    thinkingS: () => thinkingS,
    seconds: () => keys / keysPerSecond + thinkingS,
  }
}
