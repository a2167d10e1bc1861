import type { Content } from 'pdfmake/interfaces'

/** A text of so many signs at the most; what is cut off is told by three dots. */
export function shortened(text: string, most: number): string {
  const signs = Array.from(text)
  return signs.length <= most
    ? text
    : `${signs
        .slice(0, most - 1)
        .join('')
        .trim()}…`
}

/** A small label over the lines that it is for. */
export function labelled(label: string, lines: readonly string[]): Content {
  return {
    stack: [{ text: label, style: 'label' }, ...lines.map((text) => ({ text }))],
    margin: [0, 0, 0, 6],
  }
}
