import { setTimeout as wait } from 'node:timers/promises'
import { isBusy } from './troubles.ts'

/** A large price list is written for many seconds. */
const patienceMs = 60_000
const pauseMs = 15

/** Tries again while another process writes. */
export async function patiently<T>(attempt: () => T): Promise<T> {
  const until = performance.now() + patienceMs
  for (;;) {
    try {
      return attempt()
    } catch (error) {
      if (!isBusy(error) || performance.now() > until) throw error
    }
    await wait(pauseMs)
  }
}
