import { randomBytes } from 'node:crypto'
import { createServer } from 'node:http'
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Calls } from '../calls-under-way.ts'
import { readJson, tooLong } from '../read-json.ts'
import { windowFile } from '../window-files.ts'
import { windowHeaders } from '../window-headers.ts'
import { cookieName, isKey, showsKey, stopped } from './gate.ts'
import type { Gate } from './gate.ts'
import { readBody } from './read-body.ts'

export type Host = {
  /** The address that opens the window, with the key of this start. */
  readonly address: string
  readonly close: () => Promise<void>
}

type Inside = { readonly gate: Gate; readonly folder: string; readonly calls: Calls }

/** Serves the built window and its calls on this machine alone, on a port and with a key of this start. */
export async function startHost(folder: string, calls: Calls): Promise<Host> {
  const server = createServer()
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  const gate = { port, key: randomBytes(32).toString('base64url') }
  server.on('request', (request, response) => {
    void respond(request, response, { gate, folder, calls })
  })
  return { address: `http://127.0.0.1:${port}/?key=${gate.key}`, close: () => closeServer(server, calls) }
}

async function closeServer(server: Server, calls: Calls): Promise<void> {
  const closed = once(server, 'close')
  server.close()
  await calls.settled()
  server.closeIdleConnections()
  setTimeout(() => server.closeAllConnections(), 1000).unref()
  await closed
  await calls.close()
}

async function respond(request: IncomingMessage, response: ServerResponse, inside: Inside): Promise<void> {
  try {
    await route(request, response, inside)
  } catch (error) {
    if (request.destroyed && !request.complete) return
    console.error(error)
    say(response, 500, refuse('internal', 'Something in the program went wrong.'))
  }
}

async function route(request: IncomingMessage, response: ServerResponse, inside: Inside): Promise<void> {
  const { gate } = inside
  const stop = stopped(request, gate)
  if (stop !== null) return say(response, 403, stop)
  const [path = '/', search = ''] = (request.url ?? '/').split(/\?(.*)/s)
  const key = new URLSearchParams(search).get('key')
  if (path === '/' && key !== null && isKey(key, gate)) return letIn(response, gate)
  if (!showsKey(request, gate)) {
    return say(response, 403, refuse('refused', 'Open the address that was printed when Tailpiece started.'))
  }
  if (path.startsWith('/call/')) return answerCall(request, response, { inside, path })
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return say(response, 405, refuse('refused', 'A file is asked for with GET.'))
  }
  return sendFile(response, inside.folder, path)
}

function letIn(response: ServerResponse, gate: Gate): void {
  const cookie = `${cookieName(gate)}=${gate.key}; Path=/; HttpOnly; SameSite=Strict`
  response.writeHead(303, { ...windowHeaders, location: '/', 'set-cookie': cookie }).end()
}

async function answerCall(
  request: IncomingMessage,
  response: ServerResponse,
  { inside, path }: { readonly inside: Inside; readonly path: string },
): Promise<void> {
  if (request.method !== 'POST') {
    return say(response, 405, refuse('refused', 'A request is asked for with POST.'))
  }
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
    return say(response, 415, refuse('refused', 'A request comes as application/json.'))
  }
  const bytes = await readBody(request)
  if (bytes === null) return say(response, 413, tooLong())
  const input = bytes.length === 0 ? accept({}) : readJson(bytes)
  if (!input.ok) return say(response, 400, input)
  // What the router refuses is an answer like another: the page reads `ok`, not the status.
  say(response, 200, await inside.calls.call(path.slice('/call/'.length), input.value))
}

async function sendFile(response: ServerResponse, folder: string, path: string): Promise<void> {
  const file = await windowFile(folder, path)
  if (file === null) return say(response, 404, refuse('not-found', 'There is no such file in the window.'))
  response.writeHead(200, {
    ...windowHeaders,
    'content-type': file.type,
    'content-length': file.bytes.length,
  })
  response.end(file.bytes)
}

function say(response: ServerResponse, status: number, outcome: Outcome<unknown>): void {
  response.writeHead(status, { ...windowHeaders, 'content-type': 'application/json' })
  response.end(JSON.stringify(outcome))
}
