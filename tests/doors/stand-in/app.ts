import { EventEmitter } from 'node:events'
import { closeSync, mkdirSync, openSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { preventable, strict } from './strict.ts'

type Closable = { readonly close: () => Promise<boolean> }

/** Windows in the order in which they were opened; each may refuse to close. */
export const openWindows = new Set<Closable>()
/** What has to end before the process does. */
export const atEnd: (() => Promise<unknown>)[] = []

class App extends EventEmitter {
  #ready = false
  #userData = ''
  #lock: string | null = null
  #whenReady = new Promise<void>((resolve) => {
    setImmediate(() => {
      this.#ready = true
      resolve()
    })
  })
  sandboxed = false

  isReady() {
    return this.#ready
  }
  whenReady() {
    return this.#whenReady
  }
  setPath(name: string, path: string) {
    if (name !== 'userData') throw new Error(`The stand-in keeps no path for ${name}`)
    this.#userData = path
  }
  enableSandbox() {
    this.sandboxed = true
  }
  /** One holder to a folder, as Electron has it. */
  requestSingleInstanceLock() {
    mkdirSync(this.#userData, { recursive: true })
    const lock = join(this.#userData, 'stand-in.lock')
    try {
      closeSync(openSync(lock, 'wx'))
    } catch {
      return false
    }
    this.#lock = lock
    return true
  }
  /** Closes the windows, then asks once more; whoever prevents either keeps the program running. */
  quit() {
    void this.#quit()
  }
  exit(code: number) {
    void this.#end(code)
  }
  async #quit() {
    for (const window of openWindows) {
      if (!(await window.close())) return
    }
    const event = preventable()
    this.emit('will-quit', event)
    if (!event.prevented) await this.#end(0)
  }
  /** The process ends by itself once nothing is open: a handle that the program left open would show here. */
  async #end(code: number) {
    if (this.#lock !== null) rmSync(this.#lock, { force: true })
    for (const end of atEnd) await end()
    process.exitCode = code
    process.disconnect?.()
  }
}

export const app = strict('app', new App())
