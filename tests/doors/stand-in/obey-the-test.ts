import { app, openWindows } from './app.ts'
import { BrowserWindow } from './browser-window.ts'
import { blocked, handlers, sessionRules, shown } from './state.ts'

/** What a test may ask of the program that runs in the stand-in. */
export type Order =
  | { readonly does: 'evaluate'; readonly expression: string }
  | { readonly does: 'askAs'; readonly senderFrame: unknown; readonly args: readonly unknown[] }
  | { readonly does: 'secondStart' }
  | { readonly does: 'closeWindow' }
  | { readonly does: 'facts' }

export type Facts = {
  readonly webPreferences: Readonly<Record<string, unknown>>
  readonly sandboxed: boolean
  /** Whether a page may have the camera, and open a window. */
  readonly mayHaveCamera: readonly boolean[]
  readonly newWindow: string | undefined
  readonly blocked: readonly string[]
  /** Files that were shown in their folder. */
  readonly shown: readonly string[]
}

/** Listens to the test that started this process. */
export function obeyTheTest(): void {
  process.on('message', ({ id, order }: { readonly id: number; readonly order: Order }) => {
    obey(order).then(
      (value) => process.send?.({ id, value }),
      (error: unknown) => process.send?.({ id, error: String(error) }),
    )
  })
}

async function obey(order: Order): Promise<unknown> {
  const [window] = openWindows
  if (!(window instanceof BrowserWindow)) throw new Error('No window is open')
  switch (order.does) {
    case 'evaluate':
      return window.webContents.page?.evaluate(order.expression)
    case 'askAs':
      return handlers.get('call')?.({ senderFrame: order.senderFrame }, ...order.args)
    case 'secondStart':
      return app.emit('second-instance')
    case 'closeWindow':
      return window.close()
    case 'facts':
      return factsOf(window)
  }
}

function factsOf(window: BrowserWindow): Facts {
  const camera: boolean[] = []
  sessionRules.request?.(null, 'media', (may) => camera.push(may))
  if (sessionRules.check !== null) camera.push(sessionRules.check())
  return {
    webPreferences: window.webPreferences,
    sandboxed: app.sandboxed,
    mayHaveCamera: camera,
    newWindow: window.webContents.openHandler?.().action,
    blocked,
    shown,
  }
}
