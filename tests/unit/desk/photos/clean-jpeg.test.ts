import { describe, expect, it } from 'vitest'
import { cleanJpeg } from '../../../../src-main/desk/photos/clean-jpeg.ts'
import { end, exifWithPlace, frame, jfif, jpeg, letters, scan, segment } from './jpeg-for-tests.ts'

const said = (bytes: Uint8Array) => {
  const answer = cleanJpeg(bytes)
  return answer.ok ? answer.value : answer.problems[0]?.message
}
const holds = (what: string) => `The photo still holds ${what}; only the picture itself is kept.`

describe('a JPEG with nothing but its picture', () => {
  it('is taken, with its size', () => {
    expect(said(jpeg())).toEqual({ widthPx: 40, heightPx: 30 })
  })
  it('may carry its colours and be coded in any way', () => {
    expect(said(jpeg(segment(0xe2, letters('ICC_PROFILE\0xx'))))).toEqual({ widthPx: 40, heightPx: 30 })
    expect(said(jpeg(segment(0xee, letters('Adobe\0xx'))))).toEqual({ widthPx: 40, heightPx: 30 })
    const stepwise = [0xff, 0xd8, ...jfif, ...frame(300, 200, 0xc2), ...scan, ...scan, ...end]
    expect(said(new Uint8Array(stepwise))).toEqual({ widthPx: 300, heightPx: 200 })
  })
  it('reads its tables of codes as no size', () => {
    expect(said(jpeg(segment(0xc4, [0, 1, 2, 3, 4, 5])))).toEqual({ widthPx: 40, heightPx: 30 })
  })
})

describe('a JPEG that still tells something', () => {
  it.each([
    ['where it was taken', exifWithPlace(), 'camera data (EXIF), which may hold the place'],
    ['XMP', segment(0xe1, letters('http://ns.example.com/xap/')), 'camera data (XMP)'],
    ['press data', segment(0xed, letters('Photoshop 3.0')), 'press data (IPTC)'],
    ['a comment', segment(0xfe, letters('my house')), 'a comment'],
    ['another program’s data', segment(0xe5, letters('any')), 'data of a program'],
    ['a second picture', segment(0xe2, letters('MPF\0')), 'a second picture'],
    ['a small copy', segment(0xe0, letters('JFXX\0xx')), 'a small copy of the picture'],
    ['data under the name of colours', segment(0xee, letters('Other\0')), 'data of a program'],
  ])('is refused: %s', (_, inside, what) => {
    expect(said(jpeg(inside))).toBe(holds(what))
  })
  it('is refused when it hides behind the first dots, or after the end', () => {
    const behind = [0xff, 0xd8, ...jfif, ...frame(40, 30), ...scan, ...exifWithPlace(), ...scan, ...end]
    expect(said(new Uint8Array(behind))).toBe(holds('camera data (EXIF), which may hold the place'))
    expect(said(new Uint8Array([...jpeg(), 1]))).toBe(holds('something more after the picture’s end'))
  })
  it('says what to do', () => {
    const answer = cleanJpeg(jpeg(exifWithPlace()))
    expect(answer).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'refused',
          path: 'base64',
          next: 'Add it in the window, which leaves all of that out.',
        },
      ],
    })
  })
})

describe('what is no whole JPEG', () => {
  const broken = 'The photo is not a whole JPEG: it breaks off, or a part of it is damaged.'
  it('is refused wherever it breaks off', () => {
    const whole = jpeg()
    for (let length = 2; length < whole.length; length += 1)
      expect(said(whole.subarray(0, length)), String(length)).toBe(broken)
  })
  it('is refused when it is something else, or has no size', () => {
    const other = 'The photo is not a whole JPEG: it does not begin as a JPEG does.'
    expect(said(new Uint8Array(letters('\x89PNG')))).toBe(other)
    expect(said(new Uint8Array([]))).toBe(other)
    expect(said(new Uint8Array([0xff, 0xd8, ...jfif, ...scan, ...end]))).toBe(
      'The photo is not a whole JPEG: it has no size.',
    )
    expect(said(new Uint8Array([0xff, 0xd8, ...jfif, ...frame(0, 30), ...scan, ...end]))).toBe(
      'The photo is not a whole JPEG: it has no size.',
    )
  })
})
