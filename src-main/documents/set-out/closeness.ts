/** How closely a sheet is set. */
export type Closeness = {
  readonly lineHeight: number
  /** Above each block. */
  readonly gapPt: number
  /** A drawing with less room than this asks for the words to be set closer. */
  readonly leastDrawingPt: number
  /** Warnings beyond these are counted, not printed. */
  readonly mostWarnings: number
  /** Letters of one warning, of the title and of the address line. */
  readonly warningLetters: number
  readonly titleLetters: number
  readonly placeLetters: number
  /** Cautions one after another rather than one under another. */
  readonly cautionsRunOn: boolean
}

const roomy: Closeness = {
  lineHeight: 1.15,
  gapPt: 5,
  leastDrawingPt: 300,
  mostWarnings: Infinity,
  warningLetters: Infinity,
  titleLetters: Infinity,
  placeLetters: Infinity,
  cautionsRunOn: false,
}
const close: Closeness = {
  ...roomy,
  lineHeight: 1.03,
  gapPt: 3,
  leastDrawingPt: 280,
  cautionsRunOn: true,
}
const cut: Closeness = {
  ...close,
  leastDrawingPt: 250,
  mostWarnings: 6,
  warningLetters: 250,
  titleLetters: 140,
  placeLetters: 190,
}
const shortest: Closeness = {
  ...cut,
  leastDrawingPt: 245,
  mostWarnings: 5,
  warningLetters: 220,
  placeLetters: 95,
}

/** The closest setting; what is too long for this is not printed. */
export const closest: Closeness = {
  ...shortest,
  leastDrawingPt: 135,
  mostWarnings: 2,
  warningLetters: 180,
  titleLetters: 65,
  placeLetters: 95,
}

/**
 * One page holds one swap. Where its words would leave the drawing too little room, they are set closer, step by step: first the lines
 * come closer and the cautions run on; then the warnings that come last are counted rather than printed, and long names cut; at
 * the end the drawing gives way, and its letters with it. Figures, holes, pipes and the order of work are never cut, and no letter of
 * theirs is made smaller.
 */
export const settings: readonly Closeness[] = [roomy, close, cut, shortest, closest]

/** A text cut to so many letters, at the end of a word where there is one, with a mark that it goes on. */
export function cutTo(text: string, letters: number): string {
  const signs = Array.from(text)
  if (signs.length <= letters) return text
  const kept = signs.slice(0, letters - 1).join('')
  const space = kept.lastIndexOf(' ')
  return `${(space > letters / 2 ? kept.slice(0, space) : kept).trimEnd()}…`
}

/** The warnings that are printed, each cut where it must be, and in a last sentence how many more there are. */
export function warningsKept(warnings: readonly string[], { mostWarnings, warningLetters }: Closeness) {
  const kept = warnings.slice(0, mostWarnings).map((warning) => cutTo(warning, warningLetters))
  const more = warnings.length - kept.length
  if (more === 0) return kept
  return [
    ...kept,
    `${more} more ${more === 1 ? 'is' : 'are'} on the screen: read ${more === 1 ? 'it' : 'them'} before you drill.`,
  ]
}
