/**
 * Stands in for the `electron` module, so that the built main program and preload run unchanged where Electron's runtime
 * isn't: the window is a page in Chromium, and calls cross to it as plain data. What the program asks of Electron and
 * isn't here throws. It cannot show context isolation, the sandbox, menus or the speed of the real bridge.
 */
import { app } from './app.ts'
import { handlers, schemes, sessionRules, shown, told } from './state.ts'
import { strict } from './strict.ts'
import { obeyTheTest } from './obey-the-test.ts'

export { app }
export { BrowserWindow } from './browser-window.ts'

type Handler = (event: unknown, ...args: readonly unknown[]) => unknown

export const ipcMain = strict('ipcMain', {
  handle(channel: string, handler: Handler) {
    if (handlers.has(channel)) throw new Error(`A second handler for ${channel}`)
    handlers.set(channel, handler)
  },
})

export const protocol = strict('protocol', {
  registerSchemesAsPrivileged(list: readonly { readonly scheme: string }[]) {
    if (app.isReady()) throw new Error('Schemes are claimed before the program is ready')
    for (const { scheme } of list) schemes.set(scheme, null)
  },
  handle(scheme: string, answer: (request: Request) => Promise<Response>) {
    if (!schemes.has(scheme)) throw new Error(`The scheme ${scheme} was never claimed`)
    schemes.set(scheme, answer)
  },
})

export const session = strict('session', {
  defaultSession: strict('defaultSession', {
    setPermissionRequestHandler(handler: NonNullable<typeof sessionRules.request>) {
      sessionRules.request = handler
    },
    setPermissionCheckHandler(handler: () => boolean) {
      sessionRules.check = handler
    },
  }),
})

export const dialog = strict('dialog', {
  showErrorBox(title: string, content: string) {
    told.push(`${title}: ${content}`)
    console.error(`${title}: ${content}`)
  },
})

export const shell = strict('shell', {
  showItemInFolder(path: string) {
    shown.push(path)
  },
})

export const contextBridge = strict('contextBridge', {})
export const ipcRenderer = strict('ipcRenderer', {})

obeyTheTest()
