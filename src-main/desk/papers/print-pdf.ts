import { createRequire } from 'node:module'
import { dirname, sep } from 'node:path'
import type * as Pdfmake from 'pdfmake'
import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import { typeface } from '../../documents/look.ts'

export type Printed = { readonly bytes: Uint8Array; readonly pages: number }

/** Where the typeface lies: full fonts, so that names in Latin, Greek and Cyrillic letters print. */
const faces = {
  normal: '400Regular/Inter_400Regular.ttf',
  bold: '600SemiBold/Inter_600SemiBold.ttf',
  italics: '400Regular_Italic/Inter_400Regular_Italic.ttf',
  bolditalics: '600SemiBold_Italic/Inter_600SemiBold_Italic.ttf',
} as const

/** The file of a face of our typeface. */
export function faceFile(face: keyof typeof faces): string {
  return createRequire(import.meta.url).resolve(`@expo-google-fonts/inter/${faces[face]}`)
}

let printerOnce: Promise<typeof Pdfmake> | undefined

/**
 * Prints a definition, which is used up by it. The same definition and day give the same bytes: the only dates in the file are
 * `createdOn`. Nothing is fetched, and no file is read but the typeface.
 */
export async function printPdf(
  definition: TDocumentDefinitions,
  { createdOn }: { readonly createdOn: string },
): Promise<Printed> {
  printerOnce ??= readyPrinter()
  const printer = await printerOnce
  const day = new Date(`${createdOn}T00:00:00Z`)
  const info = { ...definition.info, creationDate: day, modDate: day }
  const made = printer.createPdf({ ...definition, info }, { bufferPages: true })
  const { count } = (await made.getStream()).bufferedPageRange()
  return { bytes: new Uint8Array(await made.getBuffer()), pages: count }
}

async function readyPrinter(): Promise<typeof Pdfmake> {
  const { default: printer } = (await import('pdfmake')) as unknown as { default: typeof Pdfmake }
  const folder = dirname(dirname(faceFile('normal'))) + sep
  printer.setFonts({
    [typeface]: {
      normal: faceFile('normal'),
      bold: faceFile('bold'),
      italics: faceFile('italics'),
      bolditalics: faceFile('bolditalics'),
    },
  })
  printer.setUrlAccessPolicy(() => false)
  printer.setLocalAccessPolicy((path) => path.startsWith(folder))
  return printer
}
