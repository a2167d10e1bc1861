import type { SaxesParser, SaxesTagNS } from 'saxes'
import { refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'

export type XmlHearer = {
  readonly open: (tag: SaxesTagNS) => void
  /** `text` is what stood directly in the element. */
  readonly close: (local: string, text: string) => void
}

/** Reads XML piece by piece; `feed` answers with a refusal as soon as there is one. */
export type XmlFeed = {
  readonly feed: (text: string) => Outcome<never> | undefined
  readonly end: () => Outcome<never> | undefined
}

/**
 * XML without a document type: no entity can be defined, so none can swell or reach for another file. Depth and the
 * length of a text are bounded.
 */
export async function xmlFeed(name: string, hear: XmlHearer): Promise<XmlFeed> {
  const { SaxesParser } = await import('saxes')
  const parser = new SaxesParser({ xmlns: true })
  const state = { wrong: undefined as Outcome<never> | undefined, depth: 0, since: 0, texts: [''] }
  const say = (problem: Outcome<never>) => {
    state.wrong ??= problem
  }
  parser.on('doctype', () => say(doctype(name)))
  parser.on('error', (error) => say(notWellFormed(name, error)))
  listen(parser, state, { hear, tooDeep: () => say(tooDeep(name)) })
  return {
    feed(text) {
      state.since += text.length
      if (state.since > priceFileLimits.rowChars) say(longText(name))
      if (state.wrong === undefined) parser.write(text)
      return state.wrong
    },
    end() {
      if (state.wrong === undefined) parser.close()
      return state.wrong
    },
  }
}

type State = {
  readonly wrong: Outcome<never> | undefined
  depth: number
  since: number
  readonly texts: string[]
}

function listen(
  parser: SaxesParser<{ xmlns: true }>,
  state: State,
  { hear, tooDeep }: { readonly hear: XmlHearer; readonly tooDeep: () => void },
): void {
  const { texts } = state
  parser.on('opentag', (tag) => {
    state.depth += 1
    state.since = 0
    if (state.depth > priceFileLimits.xmlDepth) tooDeep()
    if (state.wrong !== undefined) return
    texts.push('')
    hear.open(tag)
  })
  parser.on('closetag', (tag) => {
    state.depth -= 1
    state.since = 0
    if (state.wrong === undefined) hear.close(tag.local, texts.pop() ?? '')
  })
  const add = (text: string) => {
    texts[texts.length - 1] = (texts.at(-1) ?? '') + text
  }
  parser.on('text', add)
  parser.on('cdata', add)
}

function doctype(name: string): Outcome<never> {
  return refuse(
    'refused',
    `"${name}" carries a document type, by which a file can be made to swell or to reach for others. ` +
      'Price files need none: ask for it without.',
  )
}

/** The reader's own words begin with the place. */
function notWellFormed(name: string, error: Error): Outcome<never> {
  return refuse('invalid', `"${name}" is not whole XML (${error.message.replace(/\.$/, '').slice(0, 120)}).`)
}

const tooDeep = (name: string) =>
  refuse('refused', `"${name}" has more than ${priceFileLimits.xmlDepth} elements inside one another.`)
const longText = (name: string) =>
  refuse(
    'refused',
    `"${name}" has one text of more than ${priceFileLimits.rowChars.toLocaleString('en-GB')} characters.`,
  )
