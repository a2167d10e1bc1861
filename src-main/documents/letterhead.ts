import type { Content } from 'pdfmake/interfaces'
import { acrossLine, textWidthPt, typeface } from './look.ts'
import type { Firm } from '../domain/firm.ts'

/** Who the paper is from, at the top of its first page: logo and name at the left, where to find them at the right. */
export function letterhead(firm: Firm): Content[] {
  const reach = [...firm.addressLines, ...[firm.phone, firm.email].filter(isFilled)]
  const right = reachWidthPt(reach)
  const logo = firm.logo === undefined ? [] : [logoContent(firm.logo)]
  const registered = registrationLines(firm).map((line) => ({ text: line, style: 'label' }))
  return [
    {
      columns: [
        {
          width: textWidthPt - gapPt - right,
          stack: [...logo, { text: firm.name, style: 'firmName' }, ...registered],
        },
        {
          width: right,
          stack: reach.map((line) => ({ text: line, style: 'label', alignment: 'right' })),
        },
      ],
      columnGap: gapPt,
    },
    acrossLine(8, 10),
  ]
}

const gapPt = 24

/** Room for the longest line at the right, by the usual width of a letter; a line longer than that is broken. */
function reachWidthPt(lines: readonly string[]): number {
  const longest = Math.max(0, ...lines.map((line) => line.length))
  return Math.min(200, longest * 5.5)
}

/** Tax number and registrations, as the firm wants them printed. */
function registrationLines({ registrations, taxNumber }: Firm): readonly string[] {
  return [...(isFilled(taxNumber) ? [`VAT number ${taxNumber}`] : []), ...(registrations ?? [])]
}

export type Logo = NonNullable<Firm['logo']>

/** The logo within 150 by 48 points, in its own proportions. */
export function logoContent({ mediaType, base64 }: Logo): Content {
  const place = {
    fit: [150, 48] as [number, number],
    margin: [0, 0, 0, 6] as [number, number, number, number],
  }
  if (mediaType !== 'image/svg+xml') return { image: `data:${mediaType};base64,${base64}`, ...place }
  return { svg: svgText(base64), font: typeface, ...place }
}

/** The text of an SVG logo. */
export function svgText(base64: string): string {
  return new TextDecoder().decode(Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0)))
}

function isFilled(text: string | undefined): text is string {
  return text !== undefined && text !== ''
}
