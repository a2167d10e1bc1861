import { app, BrowserWindow, protocol, session } from 'electron'
import { join } from 'node:path'
import { windowFile } from '../window-files.ts'
import { windowHeaders } from '../window-headers.ts'

/** The window's own origin. Nothing else is ever loaded. */
export const home = 'app://tailpiece'

/** To be called before Electron is ready: makes app:// an origin like https, and every window a sandbox. */
export function claimScheme(): void {
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ])
}

/** Serves the built window under app://, and shuts every way out of it. */
export function closeWaysOut(folder: string): void {
  protocol.handle('app', async ({ method, url }) => {
    const { host, pathname } = new URL(url)
    const file = host === 'tailpiece' && method === 'GET' ? await windowFile(folder, pathname) : null
    if (file === null) return new Response('There is no such file.', { status: 404, headers: windowHeaders })
    return new Response(new Uint8Array(file.bytes), {
      headers: { ...windowHeaders, 'content-type': file.type },
    })
  })
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, decide) => decide(false))
  session.defaultSession.setPermissionCheckHandler(() => false)
  app.on('web-contents-created', (_event, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
    contents.on('will-navigate', (event) => event.preventDefault())
    contents.on('will-attach-webview', (event) => event.preventDefault())
  })
}

/** Opens the one window there is. */
export async function openWindow(preloadFolder: string): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    width: 1280,
    height: 800,
    minWidth: 900,
    minHeight: 600,
    show: false,
    title: 'Tailpiece',
    autoHideMenuBar: true,
    webPreferences: {
      preload: join(preloadFolder, 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      // Without this Chromium's own viewer shows no PDF.
      plugins: true,
      spellcheck: false,
    },
  })
  window.once('ready-to-show', () => window.show())
  await window.loadURL(`${home}/index.html`)
  return window
}
