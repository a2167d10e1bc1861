import { timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

export type Gate = { readonly port: number; readonly key: string }

/** Named after the port, because a browser keeps one cookie jar for every port of an address. */
export const cookieName = ({ port }: Gate): string => `tailpiece-${port}`

/** Why a request does not come in at all; null when it may. Another site's page or another name for us never may. */
export function stopped(request: IncomingMessage, gate: Gate): Outcome<never> | null {
  const home = `127.0.0.1:${gate.port}`
  if (request.headers.host !== home) return refuse('refused', `This host answers only to ${home}.`)
  const origin = request.headers.origin
  if (origin === undefined || origin === `http://${home}`) return null
  return refuse('refused', 'This host answers only its own window.')
}

/** Whether a request shows the key of this start: in the cookie that the first address set, or in a header. */
export function showsKey(request: IncomingMessage, gate: Gate): boolean {
  const inHeader = request.headers['x-tailpiece-key']
  if (typeof inHeader === 'string') return isKey(inHeader, gate)
  const name = cookieName(gate)
  const cookies = (request.headers.cookie ?? '').split(';').map((cookie) => cookie.trim().split('='))
  return cookies.some(([cookie, value]) => cookie === name && value !== undefined && isKey(value, gate))
}

export function isKey(given: string, { key }: Gate): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(key)]
  return a.length === b.length && timingSafeEqual(a, b)
}
