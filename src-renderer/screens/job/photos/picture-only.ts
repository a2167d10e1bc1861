import { words } from './photos.words.ts'

/** How large a photo may be when it is kept. */
export type Most = { readonly mostBytes: number; readonly mostPx: number }

/** A photo that can't be kept, with a sentence that says why. */
export class UnusablePhoto extends Error {}

const qualities = [0.85, 0.75, 0.6, 0.45] as const

/**
 * A photo drawn anew as a JPEG: turned the way the camera was held, no larger than may be, and with nothing in it but the picture. What
 * the camera wrote beside it (where, when, which camera) is left behind, because only the dots are drawn.
 */
export async function pictureOnly(file: Blob, { mostBytes, mostPx }: Most): Promise<string> {
  const bitmap = await opened(file)
  const scale = Math.min(1, mostPx / Math.max(bitmap.width, bitmap.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width * scale))
  canvas.height = Math.max(1, Math.round(bitmap.height * scale))
  const pen = canvas.getContext('2d')
  if (pen === null) throw new UnusablePhoto(words.unusable.noPen)
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  bitmap.close()
  for (const quality of qualities) {
    const made = await jpegOf(canvas, quality)
    if (made.size <= mostBytes) return base64Of(made)
  }
  throw new UnusablePhoto(words.unusable.tooLarge(Math.ceil(mostBytes / 1024)))
}

async function opened(file: Blob): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch (error) {
    if (!(error instanceof DOMException)) throw error
    throw new UnusablePhoto(words.unusable.unreadable)
  }
}

async function jpegOf(canvas: HTMLCanvasElement, quality: number): Promise<Blob> {
  return new Promise((done, failed) => {
    canvas.toBlob(
      (blob) => {
        if (blob === null) failed(new UnusablePhoto(words.unusable.notDrawn))
        else done(blob)
      },
      'image/jpeg',
      quality,
    )
  })
}

async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const pieces: string[] = []
  for (let at = 0; at < bytes.length; at += 0x8000)
    pieces.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)))
  return btoa(pieces.join(''))
}
