import { logoContent, svgText } from '../../documents/letterhead.ts'
import type { Logo } from '../../documents/letterhead.ts'
import { paper } from '../../documents/look.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { jpegPicture } from './jpeg-picture.ts'
import { printPdf } from './print-pdf.ts'

/**
 * A logo as it prints: it stands on its own, a page with nothing else on it could be made, and it says nothing beside the picture.
 */
export async function usableLogo(saved: Logo): Promise<Outcome<Logo>> {
  const logo = saved.mediaType === 'image/jpeg' ? { ...saved, base64: pictureAlone(saved.base64) } : saved
  if (logo.mediaType === 'image/svg+xml' && reachesOut(svgText(logo.base64))) {
    return unusable('it takes in other files', 'Save it with everything inside it, or as a PNG.')
  }
  try {
    const content = [logoContent(logo)]
    await printPdf(paper({ title: 'Logo', author: '', foot: '', content }), { createdOn: '2000-01-01' })
    return accept(logo)
  } catch (error) {
    if (!(error instanceof Error)) throw error
    const kind = { 'image/png': 'PNG', 'image/jpeg': 'JPEG', 'image/svg+xml': 'SVG' }[logo.mediaType]
    return unusable(
      `it cannot be read as ${kind}`,
      'Save it again as a PNG, JPEG or SVG, and choose it anew.',
    )
  }
}

/** A JPEG goes into a PDF byte for byte, so what a camera or a program wrote beside the picture is taken out first. */
function pictureAlone(base64: string): string {
  return Buffer.from(jpegPicture(Buffer.from(base64, 'base64'))).toString('base64')
}

/** Whether a drawing names anything outside itself. */
function reachesOut(svg: string): boolean {
  const named = [
    ...svg.matchAll(/\bhref\s*=\s*["']?\s*([^"'\s>]*)/gi),
    ...svg.matchAll(/url\(\s*["']?([^"')]*)/gi),
  ]
  return named.some(([, target = '']) => !target.startsWith('#') && !/^data:image\//i.test(target))
}

function unusable(because: string, next: string): Outcome<never> {
  return refuse('invalid', `The firm’s logo cannot be printed, because ${because}.`, 'job.firm.logo', next)
}
