import { spawn } from 'node:child_process'

type Opener = { readonly program: string; readonly words: readonly string[] }

/** Opens an address in the system's browser. False when this machine has nothing that could. */
export function openBrowser(address: string): Promise<boolean> {
  const { program, words } = openerFor(process.platform, address)
  return new Promise((resolve) => {
    const child = spawn(program, words, { stdio: 'ignore', detached: true })
    child.once('error', () => resolve(false))
    // Some openers stay until the browser closes: by then they have done their work.
    const patience = setTimeout(() => resolve(true), 3000)
    child.once('exit', (code) => {
      clearTimeout(patience)
      resolve(code === 0)
    })
    child.unref()
  })
}

function openerFor(platform: NodeJS.Platform, address: string): Opener {
  if (platform === 'darwin') return { program: 'open', words: [address] }
  if (platform === 'win32') return { program: 'rundll32', words: ['url.dll,FileProtocolHandler', address] }
  return { program: 'xdg-open', words: [address] }
}
