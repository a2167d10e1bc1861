import { readFile } from 'node:fs/promises'
import { extname, isAbsolute, join, relative } from 'node:path'

export type WindowFile = { readonly bytes: Buffer; readonly type: string }

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
}

/** A file of the built window by its path in the address; null for anything outside the folder or of another kind. */
export async function windowFile(folder: string, path: string): Promise<WindowFile | null> {
  const wanted = decodedPath(path)
  if (wanted === null || /[\\\0]/.test(wanted)) return null
  const file = join(folder, wanted === '/' ? 'index.html' : wanted)
  const inside = relative(folder, file)
  const type = types[extname(file)]
  if (inside.startsWith('..') || isAbsolute(inside) || type === undefined) return null
  try {
    return { bytes: await readFile(file), type }
  } catch (error) {
    if (isAbsent(error)) return null
    throw error
  }
}

function decodedPath(path: string): string | null {
  try {
    return decodeURIComponent(path)
  } catch {
    return null
  }
}

function isAbsent(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : null
  return code === 'ENOENT' || code === 'EISDIR' || code === 'ENOTDIR' || code === 'ENAMETOOLONG'
}
