import { app, BrowserWindow, dialog, ipcMain, shell } from 'electron'
import type { IpcMainInvokeEvent } from 'electron'
import { join, resolve } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { openDesk } from '../../desk/open-desk.ts'
import { refuse } from '../../domain/outcome.ts'
import { callsTo } from '../calls-under-way.ts'
import type { Calls } from '../calls-under-way.ts'
import { defaultDataFolder } from '../data-folder.ts'
import { showPaper, showPaperName } from './show-paper.ts'
import { claimScheme, closeWaysOut, home, openWindow } from './window.ts'

/** How long a closing window gets to begin its last save. It is hidden by then, so nobody waits. */
const lastWordsMs = 200

const dataFolder = resolve(namedFolder(process.argv) ?? defaultDataFolder(process))
// One window to a data folder: the lock on a second start belongs to this folder.
app.setPath('userData', join(dataFolder, 'window'))
claimScheme()
if (app.requestSingleInstanceLock()) void app.whenReady().then(start)
else app.quit()

/** Electron's own flags stand among ours, so only ours is looked for. */
function namedFolder(words: readonly string[]): string | undefined {
  const at = words.findIndex((word) => word === '--data' || word.startsWith('--data='))
  return words[at] === '--data' ? words[at + 1] : words[at]?.slice('--data='.length)
}

async function start(): Promise<void> {
  const desk = await openDesk({ dataFolder, mayChoosePath: false })
  if (!desk.ok) {
    dialog.showErrorBox('Tailpiece cannot start', desk.problems.map(({ message }) => message).join('\n'))
    return app.exit(1)
  }
  const calls = callsTo(desk.value)
  closeWaysOut(join(import.meta.dirname, '../renderer'))
  ipcMain.handle('call', (event, name: unknown, input: unknown) => {
    if (!isOurWindow(event)) return refuse('refused', 'Only the window of this program may ask.')
    if (name !== showPaperName) return calls.call(String(name), input)
    const { papersFolder } = desk.value.desk()
    return showPaper(input, { papersFolder, show: (path) => shell.showItemInFolder(path) })
  })
  app.on('second-instance', bringForward)
  app.on('window-all-closed', () => app.quit())
  closeDeskBeforeQuit(calls)
  giveLastWords(await openWindow(join(import.meta.dirname, '../preload')), calls)
}

/** A frame inside the window, or a page that isn't ours, gets no answer. */
function isOurWindow({ senderFrame }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame.parent === null && senderFrame.url.startsWith(`${home}/`)
}

function bringForward(): void {
  const [window] = BrowserWindow.getAllWindows()
  if (window === undefined) return
  if (window.isMinimized()) window.restore()
  window.focus()
}

/** Tells a window that it closes and waits for the save that this may start. */
function giveLastWords(window: BrowserWindow, calls: Calls): void {
  window.once('close', (event) => {
    event.preventDefault()
    window.hide()
    window.webContents.send('told', 'closing')
    void wait(lastWordsMs)
      .then(calls.settled)
      .finally(() => window.destroy())
  })
}

/** Quits only when every call is answered and the data file is one closed file again. */
function closeDeskBeforeQuit(calls: Calls): void {
  app.once('will-quit', (event) => {
    event.preventDefault()
    calls.close().then(
      () => app.quit(),
      (error: unknown) => {
        console.error(error)
        app.exit(1)
      },
    )
  })
}
