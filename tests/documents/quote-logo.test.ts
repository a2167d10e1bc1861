import { describe, expect, it } from 'vitest'
import { jpegPicture } from '../../src-main/desk/papers/jpeg-picture.ts'
import {
  end,
  exifWithPlace,
  frame,
  jfif,
  jpeg,
  letters,
  scan,
  segment,
} from '../unit/desk/photos/jpeg-for-tests.ts'

const bare = new Uint8Array([0xff, 0xd8, ...frame(40, 30), ...scan, ...end])
const icc = segment(0xe2, letters('ICC_PROFILE\0profile'))
const adobe = segment(0xee, letters('Adobe\0d'))
/** Exif data that says orientation 6 alone. Source: Exif 2.3, 4.6.4 A; big-endian TIFF with one entry. */
const turnTiff = [0x2a, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0]
const quarterTurn = segment(0xe1, [...letters('Exif\0\0MM\0'), ...turnTiff])

/** Little-endian Exif data whose one entry is this tag. */
function exif(tag: number, value: number): readonly number[] {
  const entry = [tag & 0xff, tag >> 8, 3, 0, 1, 0, 0, 0, value, 0, 0, 0]
  return segment(0xe1, [...letters('Exif\0\0II*\0'), 8, 0, 0, 0, 1, 0, ...entry, 0, 0, 0, 0])
}

const after = (bytes: Uint8Array, inside: readonly number[]) =>
  new Uint8Array([...bytes.subarray(0, 2), ...inside, ...bytes.subarray(2)])

describe('a JPEG logo, as it goes into a paper', () => {
  it.each([
    ['a comment', segment(0xfe, letters('made by'))],
    ['press data', segment(0xed, letters('Photoshop 3.0'))],
    ['XMP', segment(0xe1, letters('http://ns.example.com/xap/1.0/'))],
    ['a small copy', segment(0xe0, [...letters('JFXX\0'), 1, 2, 3])],
    ['a second picture', segment(0xe2, letters('MPF\0more'))],
    ['data of a program', segment(0xef, letters('anything'))],
    ['the header of JFIF', jfif],
    ['a thing too short to have a name', segment(0xe5, [])],
  ])('leaves out %s', (_, inside) => {
    expect(jpegPicture(after(bare, inside))).toEqual(bare)
  })

  it('keeps the picture and its colours', () => {
    for (const inside of [icc, adobe, segment(0xdb, [1, 2]), segment(0xc4, [3]), segment(0xdd, [0, 4])])
      expect(jpegPicture(after(bare, inside))).toEqual(after(bare, inside))
  })

  it('keeps which way up it is, and no place', () => {
    expect(jpegPicture(after(bare, exifWithPlace()))).toEqual(after(bare, quarterTurn))
    expect(jpegPicture(after(bare, exif(0x0112, 6)))).toEqual(after(bare, quarterTurn))
    expect(jpegPicture(after(bare, quarterTurn))).toEqual(after(bare, quarterTurn))
  })

  it.each([
    ['it says upright', exif(0x0112, 1)],
    ['it says what is no way up', exif(0x0112, 9)],
    ['it says nothing of it', exif(0x010f, 6)],
    [
      'its list lies outside it',
      segment(0xe1, [...letters('Exif\0\0MM\0*'), 0, 0, 9, 9, 0, 1, 1, 0x12, 0, 3]),
    ],
    ['it breaks off', segment(0xe1, letters('Exif\0\0'))],
  ])('leaves out camera data where %s', (_, inside) => {
    expect(jpegPicture(after(bare, inside))).toEqual(bare)
  })

  it('ends where the picture ends', () => {
    expect(jpegPicture(new Uint8Array([...bare, ...letters('more')]))).toEqual(bare)
    const open = bare.subarray(0, bare.length - 2)
    expect(jpegPicture(open)).toEqual(open)
  })

  it.each([
    ['no JPEG', new Uint8Array(letters('no picture'))],
    ['nothing', new Uint8Array()],
    ['a file that breaks off in a segment', jpeg().subarray(0, 12)],
    ['a file that breaks off between segments', jpeg().subarray(0, 20)],
    ['a segment of no length', new Uint8Array([0xff, 0xd8, 0xff, 0xfe, 0, 0, ...frame(40, 30), ...scan])],
    ['bytes where a segment should be', new Uint8Array([0xff, 0xd8, 1, ...frame(40, 30), ...scan])],
  ])('is left as it is where it is %s', (_, bytes) => {
    expect(jpegPicture(bytes)).toEqual(bytes)
  })
})
