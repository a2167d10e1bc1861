import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { dayInWords } from '../days.ts'
import { tight } from '../in-words.ts'
import { letterhead } from '../letterhead.ts'
import { ink, paper, plain, softInk, textWidthPt } from '../look.ts'
import { labelled, shortened } from '../paper-blocks.ts'
import type { PaperHead } from './material.ts'

type Named = {
  readonly head: PaperHead
  readonly name: string
  /** Stands beside the name while the paper is not yet what it will be. */
  readonly draft?: string
  /** What the day of the paper is called: `Date`, `Done`. */
  readonly content: readonly Content[]
}

/** A paper of after the job: the firm's letterhead, the paper's name, who and which quote, and then what it says. */
export function afterPaper({ head, name, draft, content }: Named): TDocumentDefinitions {
  const { firm, quoteName } = head
  const title = `${draft === undefined ? '' : 'Draft of '}${draft === undefined ? name : lowered(name)} for quote ${quoteName}`
  const beside = draft === undefined ? [] : [{ text: `${tight.repeat(3)}${draft}`, style: 'big' }]
  return paper({
    title,
    author: firm.name,
    foot: `${shortened(firm.name, Math.max(12, 74 - title.length))}  ·  ${title}`,
    content: [
      ...letterhead(firm),
      { text: [{ text: name, style: 'paperName' }, ...beside], margin: [0, 0, 0, 6] },
      whoAndWhich(head),
      ...content,
    ],
  })
}

function lowered(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1)
}

const whichWidthPt = 118
const dayWidthPt = 106

function whoAndWhich({ customer, site, quoteName, acceptedOn, madeOn }: PaperHead): Content {
  const gap = 14
  const width = (textWidthPt - whichWidthPt - dayWidthPt - 3 * gap) / 2
  const which = [labelled('Quote', [quoteName]), labelled('Accepted', [dayInWords(acceptedOn)])]
  return {
    columns: [
      { width, stack: [labelled('For', [customer.name, ...customer.addressLines])] },
      { width, stack: [labelled('Work at', site ?? ['The same address'])] },
      { width: whichWidthPt, stack: which },
      { width: dayWidthPt, stack: [labelled('Date', [dayInWords(madeOn)])] },
    ],
    columnGap: gap,
  }
}

/** The few things that are looked for first, large and side by side. */
export function atAGlance(cells: readonly (readonly [label: string, big: string])[]): Content {
  const body = cells.map(([label, big]): TableCell => ({
    stack: [
      { text: label, style: 'label' },
      { text: big, style: 'big' },
    ],
  }))
  return {
    margin: [0, 6, 0, 0],
    table: { widths: body.map(() => '*'), body: [body] },
    layout: {
      ...plain,
      hLineWidth: () => 1,
      hLineColor: () => ink,
      paddingTop: () => 8,
      paddingBottom: () => 6,
    },
  }
}

/** Labels at the left and what they stand for at the right, one pair a row. */
export function pairs(rows: readonly (readonly [label: string, says: string])[]): Content {
  return {
    margin: [0, 2, 0, 4],
    table: {
      widths: [170, textWidthPt - 178],
      dontBreakRows: true,
      body: rows.map(([label, says]): TableCell[] => [{ text: label, color: softInk }, { text: says }]),
    },
    layout: plain,
  }
}

/** Lines to sign on, one row a person: signature, name in capitals, date. */
export function signatures(who: readonly string[]): Content {
  const width = (textWidthPt - 16) / 3
  return {
    table: {
      widths: [width, width, width],
      dontBreakRows: true,
      body: who.map((name) => [toSign(`Signed, for ${name}`), toSign('Name in capitals'), toSign('Date')]),
    },
    layout: plain,
  }
}

/** A line to write on, and under it what. */
function toSign(label: string): TableCell {
  const line = { type: 'line', x1: 0, y1: 0, x2: 150, y2: 0, lineWidth: 0.75, lineColor: softInk } as const
  return {
    stack: [{ canvas: [line] }, { text: label, style: 'label', margin: [0, 4, 0, 0] }],
    margin: [0, 26, 0, 0],
  }
}
