import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import type { Browser } from 'playwright-core'

const usualPlaces: Readonly<Record<string, readonly string[]>> = {
  linux: [
    // The same engine without the browser's own bars: it starts in half the time.
    '/usr/bin/chromium-headless-shell',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/snap/bin/chromium',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    join(homedir(), 'Applications/Google Chrome.app/Contents/MacOS/Google Chrome'),
  ],
  win32: [process.env['PROGRAMFILES'], process.env['PROGRAMFILES(X86)'], process.env['LOCALAPPDATA']]
    .filter((folder) => folder !== undefined)
    .map((folder) => join(folder, 'Google/Chrome/Application/chrome.exe')),
}

const isRoot = process.getuid?.() === 0

/** What a browser for tests leaves out: anything that asks the outside world for something. */
export const browserFlags: readonly string[] = [
  // Chromium has no sandbox for root, which is what a bare container runs as.
  ...(isRoot ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Where Chromium is on this machine; installs it where that is possible without asking. */
export function findChromium(): string {
  const named = process.env['TAILPIECE_CHROMIUM']
  if (named !== undefined) {
    if (existsSync(named)) return named
    throw new Error(`TAILPIECE_CHROMIUM names ${named}, where there is no file.`)
  }
  const places = [...(usualPlaces[process.platform] ?? []), chromium.executablePath()]
  const found = places.find((place) => existsSync(place)) ?? installed()
  if (found !== null) return found
  throw new Error(
    'No Chromium was found. Install one, or say where it is: TAILPIECE_CHROMIUM=/path/to/chromium npm test',
  )
}

function installed(): string | null {
  if (!isRoot || !existsSync('/usr/bin/apt-get')) return null
  const apt = (words: readonly string[]) =>
    spawnSync('apt-get', words, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  apt(['update', '-q'])
  const names = ['chromium-headless-shell', 'chromium'] as const
  const name = names.find(
    (each) => apt(['install', '-y', '-q', '--no-install-recommends', each]).status === 0,
  )
  return name === undefined ? null : `/usr/bin/${name}`
}

/** A browser with a fresh profile. Close it when the test is over. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: [...browserFlags] })
}
