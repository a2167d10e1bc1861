import type { Firm } from '../../../src-main/domain/firm.ts'
import { words } from './firm.words.ts'

export type Logo = NonNullable<Firm['logo']>
type MediaType = Logo['mediaType']

const mostBytes = 2_000_000

const byEnding: Readonly<Record<string, MediaType>> = {
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  svg: 'image/svg+xml',
}

/** The kind of picture a file is by its own word, or else by the end of its name; null when it is none that prints. */
export function pictureKind(type: string, name: string): MediaType | null {
  const said = Object.values(byEnding).find((kind) => kind === type)
  return said ?? byEnding[name.split('.').at(-1)?.toLowerCase() ?? ''] ?? null
}

/** A picture file as a logo, or the sentence that says why it is none. */
export async function readLogo(file: File): Promise<Logo | string> {
  const mediaType = pictureKind(file.type, file.name)
  if (mediaType === null) return words.logo.notKind
  if (file.size > mostBytes) return words.logo.tooBig
  const logo = { mediaType, base64: base64Of(new Uint8Array(await file.arrayBuffer())) }
  return (await isDrawn(logo)) ? logo : words.logo.unreadable
}

export const logoUrl = ({ mediaType, base64 }: Logo): string => `data:${mediaType};base64,${base64}`

const piece = 0x8000

function base64Of(bytes: Uint8Array): string {
  let letters = ''
  for (let at = 0; at < bytes.length; at += piece) {
    letters += String.fromCharCode(...bytes.subarray(at, at + piece))
  }
  return btoa(letters)
}

/** Whether the window can draw it; a file that is no picture it cannot. */
async function isDrawn(logo: Logo): Promise<boolean> {
  const picture = new Image()
  return new Promise((found) => {
    picture.addEventListener('load', () => found(true))
    picture.addEventListener('error', () => found(false))
    picture.src = logoUrl(logo)
  })
}
