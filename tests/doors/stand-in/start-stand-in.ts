import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { doorEnv, ended, top } from '../doors-for-tests.ts'
import type { Facts, Order } from './obey-the-test.ts'

export type StandIn = {
  /** Evaluates an expression in the window. */
  readonly evaluate: (expression: string) => Promise<unknown>
  /** Asks as the window does. */
  readonly call: (name: string, input: unknown) => Promise<unknown>
  /** Asks the program as if the call came from this frame. */
  readonly askAs: (senderFrame: unknown, ...args: readonly unknown[]) => Promise<unknown>
  readonly facts: () => Promise<Facts>
  readonly secondStart: () => Promise<unknown>
  /** Closes the window as a person does, and waits for the program's end. */
  readonly close: () => Promise<number | null>
  /** Ends the program if a test left it running. */
  readonly end: () => Promise<void>
}

type Message = {
  readonly loaded?: string
  readonly id?: number
  readonly value?: unknown
  readonly error?: string
}

/** Runs the built main program with the stand-in for electron. */
export function spawnStandIn(dataFolder: string) {
  const register = join(import.meta.dirname, 'register.mjs')
  const words = ['--import', register, join(top, 'out/main/electron.js'), '--data', dataFolder]
  return spawn(process.execPath, words, {
    cwd: top,
    env: doorEnv,
    timeout: 240_000,
    serialization: 'advanced',
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  })
}

/** Starts the program and waits until its window has loaded. */
export async function startStandIn(dataFolder: string): Promise<StandIn> {
  const child = spawnStandIn(dataFolder)
  const waiting = new Map<number, (message: Message) => void>()
  let last = 0
  const loaded = new Promise<void>((resolve, reject) => {
    child.on('message', (message: Message) => {
      if (message.loaded !== undefined) resolve()
      if (message.id !== undefined) waiting.get(message.id)?.(message)
    })
    child.once('exit', (code) =>
      reject(new Error(`The program ended with ${code} before its window was there`)),
    )
  })
  const order = (what: Order) =>
    new Promise<unknown>((resolve, reject) => {
      last += 1
      waiting.set(last, ({ error, value }) =>
        error === undefined ? resolve(value) : reject(new Error(error)),
      )
      child.send({ id: last, order: what })
    })
  await loaded
  const evaluate = (expression: string) => order({ does: 'evaluate', expression })
  return {
    evaluate,
    call: (name, input) =>
      evaluate(`window.tailpiece.call(${JSON.stringify(name)}, ${JSON.stringify(input)})`),
    askAs: (senderFrame, ...args) => order({ does: 'askAs', senderFrame, args }),
    facts: () => order({ does: 'facts' }) as Promise<Facts>,
    secondStart: () => order({ does: 'secondStart' }),
    close: async () => {
      await order({ does: 'closeWindow' })
      await ended(child)
      return child.exitCode
    },
    end: () => {
      child.kill()
      return ended(child)
    },
  }
}
