import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { lettersOfFace } from '../../../../src-main/desk/papers/letters-of-face.ts'
import { faceFile } from '../../../../src-main/desk/papers/print-pdf.ts'

type Fontkit = { readonly openSync: (file: string) => { readonly characterSet: readonly number[] } }

/** The reader that the PDF library itself uses for typefaces. */
function fontkit(): Fontkit {
  const printer = createRequire(import.meta.url).resolve('pdfmake')
  const pdfkit = createRequire(printer).resolve('pdfkit')
  return createRequire(pdfkit)('fontkit') as Fontkit
}

describe('the letters of our typeface', () => {
  it.each(['normal', 'bold', 'italics', 'bolditalics'] as const)(
    'are found in the %s face as the PDF library’s own reader finds them',
    async (face) => {
      const ours = await lettersOfFace(faceFile(face))
      const theirs = new Set(fontkit().openSync(faceFile(face)).characterSet)
      const asked = [...theirs].filter((code) => code !== 0xffff)
      expect(asked.length).toBeGreaterThan(2000)
      expect(asked.filter((code) => !ours.has(code))).toEqual([])
      expect([...ours].filter((code) => !theirs.has(code))).toEqual([])
    },
  )

  it('hold Polish, Greek and Cyrillic, and the signs that our papers use', async () => {
    const letters = await lettersOfFace(faceFile('normal'))
    const used = 'ĄĆĘŁŃÓŚŹŻąćęłńóśźż ΑΒΓΔΩάέήίόύώ ЖЩЮя £€×−·’“”…²³°½Ω≤≥•\u00a0\u200b'
    expect(Array.from(used).filter((sign) => !letters.has(sign.codePointAt(0) ?? 0))).toEqual([])
    expect(letters.has('王'.codePointAt(0) ?? 0)).toBe(false)
  })
})
