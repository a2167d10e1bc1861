/** What a spreadsheet program would take for the start of a formula, with any number of apostrophes before it. */
const likeFormula = /^'*[=+\-@\t\r]/
const guarded = /^'+[=+\-@\t\r]/

/**
 * A text cell that no spreadsheet program runs as a formula: where it would begin one it gets an apostrophe in front. A text
 * that has the apostrophe already gets one more, so that `unguarded` gives every text back as it was.
 */
export function guardedText(text: string): string {
  return likeFormula.test(text) ? `'${text}` : text
}

/** The text that was guarded. What never was comes back as it is. */
export function unguarded(text: string): string {
  return guarded.test(text) ? text.slice(1) : text
}
