import { wordsIn } from '../item-match.ts'

type Worded = { readonly code: string; readonly name: string; readonly gtin?: string | null | undefined }

/** The text under which a row is found: its name, its code and its item number, in parts. */
export function rowWords({ code, name, gtin }: Worded): string {
  const words = `${partedText(name)} ${partedText(code)}`
  return gtin === undefined || gtin === null ? words : `${words} ${gtin}`
}

const [gap, figure, letter, joint] = [0, 1, 2, 3] as const
const kinds = new Uint8Array(128)
kinds.fill(figure, 48, 58).fill(letter, 65, 91).fill(letter, 97, 123).fill(joint, 46, 48)
const apostrophe = 39

/**
 * Text with a gap wherever figures meet letters, and none of the signs that the index would keep: taken apart at gaps and in
 * lower case it is `wordsIn`. Plain letters go a quick way.
 */
export function partedText(text: string): string {
  let parted = ''
  let from = 0
  let before: number = gap
  for (let at = 0; at < text.length; at += 1) {
    const sign = text.charCodeAt(at)
    if (sign > 127 || sign === apostrophe) return wordsIn(text).join(' ')
    const kind = kinds[sign] ?? gap
    if (kind === joint && !isBetweenFigures(text, at)) {
      parted += `${text.slice(from, at)} `
      from = at + 1
      before = gap
      continue
    }
    if (kind !== before && kind !== gap && before !== gap && kind + before === figure + letter) {
      parted += `${text.slice(from, at)} `
      from = at
    }
    before = kind === joint ? figure : kind
  }
  return parted + text.slice(from)
}

function isBetweenFigures(text: string, at: number): boolean {
  return kinds[text.charCodeAt(at - 1)] === figure && kinds[text.charCodeAt(at + 1)] === figure
}
