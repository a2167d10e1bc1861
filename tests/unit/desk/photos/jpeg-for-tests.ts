/** A segment of a JPEG: its marker, its length, and what it holds. */
export function segment(marker: number, body: readonly number[]): readonly number[] {
  const length = body.length + 2
  return [0xff, marker, length >> 8, length & 0xff, ...body]
}

export const letters = (text: string): readonly number[] => Array.from(text, (letter) => letter.charCodeAt(0))

const start = [0xff, 0xd8]
export const end = [0xff, 0xd9]
export const jfif = segment(0xe0, [...letters('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0])

export function frame(widthPx: number, heightPx: number, marker = 0xc0): readonly number[] {
  const size = [heightPx >> 8, heightPx & 0xff, widthPx >> 8, widthPx & 0xff]
  return segment(marker, [8, ...size, 1, 1, 0x11, 0])
}

/** Coded dots with a stuffed 0xff and a restart among them. */
export const scan = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56]

/** The parts of a whole JPEG with something put in after its beginning. */
export function jpeg(...inside: readonly (readonly number[])[]): Uint8Array {
  return new Uint8Array([...start, ...jfif, ...inside.flat(), ...frame(40, 30), ...scan, ...end])
}

/**
 * What a telephone writes: EXIF with the camera turned a quarter (orientation 6) and a place, 51 degrees 30 minutes north. Big-endian
 * TIFF: one list with orientation and the pointer to the list of the place. Source: EXIF 2.3, tags 0x0112, 0x8825, 0x0001, 0x0002.
 */
export function exifWithPlace(): readonly number[] {
  const two = (value: number) => [value >> 8, value & 0xff]
  const four = (value: number) => [0, 0, ...two(value)]
  const gpsAt = 8 + 2 + 2 * 12 + 4
  const degreesAt = gpsAt + 2 + 2 * 12 + 4
  const first = [
    ...two(2),
    ...two(0x0112),
    ...two(3),
    ...four(1),
    ...two(6),
    0,
    0,
    ...two(0x8825),
    ...two(4),
    ...four(1),
    ...four(gpsAt),
    ...four(0),
  ]
  const place = [
    ...two(2),
    ...two(1),
    ...two(2),
    ...four(2),
    ...letters('N\0'),
    0,
    0,
    ...two(2),
    ...two(5),
    ...four(3),
    ...four(degreesAt),
    ...four(0),
  ]
  const degrees = [51, 1, 30, 1, 0, 1].flatMap(four)
  const tiff = [...letters('MM'), 0, 42, ...four(8), ...first, ...place, ...degrees]
  return segment(0xe1, [...letters('Exif\0\0'), ...tiff])
}
