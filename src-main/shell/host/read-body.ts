import type { IncomingMessage } from 'node:http'
import { mostInputBytes } from '../read-json.ts'

/** The bytes of a request's body; null when there are too many. Those are read off all the same, but not kept. */
export async function readBody(request: IncomingMessage): Promise<Buffer | null> {
  const parts: Buffer[] = []
  let bytes = 0
  for await (const part of request as AsyncIterable<Buffer>) {
    bytes += part.length
    if (bytes > mostInputBytes) parts.length = 0
    else parts.push(part)
  }
  return bytes > mostInputBytes ? null : Buffer.concat(parts)
}
