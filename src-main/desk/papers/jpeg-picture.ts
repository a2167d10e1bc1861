const startOfScan = 0xda
const comment = 0xfe
const exifMarker = 0xe1

/** The segments of programs that the picture itself needs: its colours (ICC in APP2, Adobe in APP14). */
const ofThePicture = ['ICC_PROFILE', 'Adobe']

/**
 * A JPEG without what is written beside its picture: comments, small copies, and the data of cameras and programs; only which way up
 * it is stays. Bytes that are no JPEG, or break off before the picture, come back as they are, for the reader of pictures to refuse.
 * Source: ITU-T T.81 annex B (markers); Exif and XMP lie in APP1, IPTC in APP13, a small copy in JFIF's APP0.
 */
export function jpegPicture(bytes: Uint8Array): Uint8Array {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return bytes
  const kept = [bytes.subarray(0, 2)]
  let at = 2
  for (;;) {
    const marker = bytes[at + 1] ?? 0
    const length = (bytes[at + 2] ?? 0) * 256 + (bytes[at + 3] ?? 0)
    const end = at + 2 + length
    if (bytes[at] !== 0xff || length < 2 || end > bytes.length) return bytes
    const segment = bytes.subarray(at, end)
    if (marker === startOfScan)
      return new Uint8Array(Buffer.concat([...kept, bytes.subarray(at, endOfPicture(bytes, end))]))
    const turned = marker === exifMarker ? orientationIn(segment) : null
    if (turned !== null) kept.push(orientationAlone(turned))
    else if (!saysMore(marker, segment)) kept.push(segment)
    at = end
  }
}

function saysMore(marker: number, segment: Uint8Array): boolean {
  if (marker === comment) return true
  if (marker < 0xe0 || marker > 0xef) return false
  return !ofThePicture.some((name) => textAt(segment, 4, name.length) === name)
}

function textAt(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length))
}

const orientationTag = 0x0112

/**
 * Which way up a picture lies, 2 to 8, where its Exif data says that it is turned; else null.
 * Source: Exif 2.3, 4.6.2 (the header and entries of TIFF 6.0) and 4.6.4 A (Orientation).
 */
function orientationIn(segment: Uint8Array): number | null {
  if (textAt(segment, 4, 6) !== 'Exif\0\0' || segment.length < 24) return null
  const tiff = new DataView(segment.buffer, segment.byteOffset + 10, segment.length - 10)
  const little = tiff.getUint16(0) === 0x4949
  const directory = tiff.getUint32(4, little)
  if (directory + 2 > tiff.byteLength) return null
  const last = directory + 2 + 12 * tiff.getUint16(directory, little)
  for (let entry = directory + 2; entry < last && entry + 12 <= tiff.byteLength; entry += 12) {
    if (tiff.getUint16(entry, little) !== orientationTag) continue
    const turned = tiff.getUint16(entry + 8, little)
    return turned >= 2 && turned <= 8 ? turned : null
  }
  return null
}

/** Exif data with one entry and no more. */
function orientationAlone(turned: number): Uint8Array {
  const header = [0xff, exifMarker, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0]
  const tiff = [0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8, 0, 1]
  const entry = [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, turned, 0, 0]
  return Uint8Array.from([...header, ...tiff, ...entry, 0, 0, 0, 0])
}

/** Just after the mark that ends the picture, so that nothing behind it goes along. */
function endOfPicture(bytes: Uint8Array, from: number): number {
  for (let at = from; at < bytes.length - 1; at += 1) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return at + 2
  }
  return bytes.length
}
