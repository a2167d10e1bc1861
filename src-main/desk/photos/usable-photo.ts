import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { cleanJpeg } from './clean-jpeg.ts'
import type { JpegSize } from './clean-jpeg.ts'
import type { PhotoLimits } from './photo-limits.ts'

const base64Text = /^[A-Za-z0-9+/]*={0,2}$/

export type UsablePhoto = { readonly bytes: Uint8Array; readonly size: JpegSize }

/** A photo out of its base64, if it is a clean JPEG within the limits. */
export function usablePhoto(base64: string, limits: PhotoLimits): Outcome<UsablePhoto> {
  const bytes = bytesOf(base64)
  if (!bytes.ok) return bytes
  const size = fitting(bytes.value, limits)
  return size.ok ? accept({ bytes: bytes.value, size: size.value }) : size
}

function bytesOf(base64: string): Outcome<Uint8Array> {
  if (base64.length % 4 === 0 && base64Text.test(base64)) return accept(Buffer.from(base64, 'base64'))
  return refuse(
    'invalid',
    'The photo is not written in base64: letters, figures, + and / in fours.',
    'base64',
  )
}

/** The photo's size, if it is a clean JPEG within the limits. */
function fitting(bytes: Uint8Array, { mostBytes, mostPx }: PhotoLimits): Outcome<JpegSize> {
  if (bytes.length > mostBytes) {
    const [has, may] = [bytes.length, mostBytes].map((count) => Math.ceil(count / 1024))
    return refuse('refused', `The photo has ${has} kB; at most ${may} kB are kept.`, 'base64')
  }
  const size = cleanJpeg(bytes)
  if (!size.ok) return size
  const { widthPx, heightPx } = size.value
  if (Math.max(widthPx, heightPx) <= mostPx) return size
  return refuse(
    'refused',
    `The photo is ${widthPx} by ${heightPx} dots; at most ${mostPx} either way are kept.`,
    'base64',
  )
}
