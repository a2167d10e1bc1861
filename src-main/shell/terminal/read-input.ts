import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { mostInputBytes, readJson, tooLong } from '../read-json.ts'

/** The input of a request: from a file, from standard input when the file is `-`, or nothing. */
export async function readInput(file: string | undefined): Promise<Outcome<unknown>> {
  if (file === undefined) return accept({})
  const bytes = file === '-' ? accept(await buffer(process.stdin)) : await bytesOf(file)
  if (!bytes.ok) return bytes
  return bytes.value.length > mostInputBytes ? tooLong() : readJson(bytes.value)
}

async function bytesOf(file: string): Promise<Outcome<Buffer>> {
  const path = resolve(file)
  try {
    return accept(await readFile(path))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null
    if (code === 'ENOENT') return refuse('io', `There is no file ${path}.`)
    if (code === 'EISDIR') return refuse('io', `${path} is a folder; name a file in it.`)
    return refuse('io', `The file ${path} could not be read (${String(code)}).`)
  }
}
