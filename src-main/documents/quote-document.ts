import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { labelled, shortened } from './paper-blocks.ts'
import type { CustomerQuoteView } from './customer-quote-view.ts'
import { dayInWords } from './days.ts'
import { inSentence, money, tight } from './in-words.ts'
import { letterhead } from './letterhead.ts'
import { ink, paper, plain, points, section, softInk, textWidthPt } from './look.ts'
import { optionsTable, priceBlocks, totalLabel } from './quote/price-blocks.ts'
import type { Prices } from './quote/prices.ts'
import type { ScopeOfRoom } from './quote/scope.ts'

/** The quote on paper. The definition is used up by printing: ask for a new one each time. */
export function quoteDocument(view: CustomerQuoteView): TDocumentDefinitions {
  const { firm, prices } = view
  return paper({
    title: titleOf(view),
    author: firm.name,
    foot: footOf(view),
    content: [
      ...letterhead(firm),
      nameOfPaper(view),
      whoAndWhen(view),
      atAGlance(view),
      ...section('What we will do', [...view.rooms.flatMap(roomBlock), ...wholeJob(view.wholeJob)]),
      ...section('Price', priceBlocks(prices)),
      ...(prices.options.length === 0 ? [] : section('Options, not in the total', [optionsTable(prices)])),
      ...section('Not included', points(view.notIncluded)),
      ...section('What the price rests on', points(view.assumptions)),
      ...safetyBlocks(view),
      ...lastWords(view),
    ],
  })
}

/** A quote without a number and a day of issue binds nobody, and says so. */
function isDraft({ number, issuedOn }: CustomerQuoteView): boolean {
  return number === undefined || issuedOn === undefined
}

function nameOfPaper(view: CustomerQuoteView): Content {
  const draft = isDraft(view) ? [{ text: `${tight.repeat(3)}Draft, not yet issued`, style: 'big' }] : []
  return { text: [{ text: 'Quote', style: 'paperName' }, ...draft], margin: [0, 0, 0, 6] }
}

function revisionIn({ revision }: CustomerQuoteView): readonly string[] {
  return revision === undefined || revision === 0 ? [] : [`Revision ${revision}`]
}

/** What the paper is called, on each of its pages and in the file's title. */
function titleOf(view: CustomerQuoteView): string {
  if (isDraft(view)) return `Draft of quote ${view.reference}, not yet issued`
  return [`Quote ${view.number ?? ''}`, ...revisionIn(view).map(inSentence)].join(', ')
}

/** The firm and the quote, on one line beside the page number. */
function footOf(view: CustomerQuoteView): string {
  const title = shortened(titleOf(view), 56)
  return `${shortened(view.firm.name, 74 - title.length)}  ·  ${title}`
}

/** Room for a number and for the longest date, each on one line. */
const numberWidthPt = 78
const dateWidthPt = 106

function whoAndWhen(view: CustomerQuoteView): Content {
  const { customer, site, reference, quotedOn, number, issuedOn } = view
  const who = [customer.name, ...customer.addressLines]
  const which = isDraft(view)
    ? [[labelled('Reference', [reference])], [labelled('Date', [dayInWords(quotedOn)])]]
    : [
        [labelled('Quote number', [number ?? '', ...revisionIn(view)])],
        [
          labelled('Issued', [dayInWords(issuedOn ?? quotedOn)]),
          ...(reference === number ? [] : [labelled('Reference', [reference])]),
        ],
      ]
  const gap = 14
  const width = (textWidthPt - numberWidthPt - dateWidthPt - 3 * gap) / 2
  return {
    columns: [
      { width, stack: [labelled('For', who)] },
      { width, stack: [labelled('Work at', site ?? ['The same address'])] },
      ...which.map((stack, at) => ({ width: at === 0 ? numberWidthPt : dateWidthPt, stack })),
    ],
    columnGap: gap,
  }
}

function atAGlance(view: CustomerQuoteView): Content {
  const { prices, validUntil } = view
  const cell = (label: string, big: string): TableCell => ({
    stack: [
      { text: label, style: 'label' },
      { text: big, style: 'big' },
    ],
  })
  const deposit = prices.depositPence === 0 ? [] : [cell('Deposit to book', money(prices.depositPence))]
  const cells = [
    cell(totalLabel(prices), money(prices.grossPence)),
    ...deposit,
    cell(`This quote ${isDraft(view) ? 'would stand' : 'stands'} until`, dayInWords(validUntil)),
  ]
  return {
    margin: [0, 6, 0, 0],
    table: { widths: cells.map(() => '*'), body: [cells] },
    layout: {
      ...plain,
      hLineWidth: () => 1,
      hLineColor: () => ink,
      paddingTop: () => 8,
      paddingBottom: () => 6,
    },
  }
}

function roomBlock({ name, work, warmth }: ScopeOfRoom): Content[] {
  return [
    {
      // What is kept together must fit on one page, or it is not printed at all.
      unbreakable: work.length <= 15,
      margin: [0, 0, 0, 6],
      stack: [
        { text: name, style: 'subheading', margin: [0, 2, 0, 3] },
        ...points(work),
        ...warmth.map((text) => ({ text, style: 'soft', margin: [0, 2, 0, 0] }) satisfies Content),
      ],
    },
  ]
}

function wholeJob(sentences: readonly string[]): Content[] {
  if (sentences.length === 0) return []
  const head: Content = { text: 'The job as a whole', style: 'subheading', margin: [0, 2, 0, 3] }
  return [{ unbreakable: true, stack: [head, ...points(sentences)] }]
}

function safetyBlocks({ safety }: CustomerQuoteView): Content[] {
  const group = (title: string, sentences: readonly string[]): Content[] => {
    const [first, ...rest] = points(sentences)
    if (first === undefined) return []
    const head: Content = { text: title, style: 'subheading', margin: [0, 4, 0, 3] }
    return [{ unbreakable: true, stack: [head, first] }, ...rest]
  }
  return section('Safety', [
    ...group('For you to know', safety.forCustomer),
    ...group('How we will work', safety.forFitter),
  ])
}

/** Terms and acceptance, on one page where they fit on one. */
function lastWords(view: CustomerQuoteView): Content[] {
  const own = (view.firm.terms ?? '').split(/\n+/).filter((text) => text.trim() !== '')
  const terms = own.map((text): Content => ({ text, margin: [0, 0, 0, 4] }))
  const blocks = [...section('Terms', terms), acceptance(view)]
  const short = own.join('').length <= 1800 && own.length <= 12
  return short ? [{ unbreakable: true, stack: blocks }] : blocks
}

function withTax({ reverseChargeNotes, reverseChargePence }: Prices): string {
  return reverseChargeNotes.length === 0
    ? ' with VAT'
    : `; I pay ${money(reverseChargePence)} of VAT to HMRC myself by reverse charge`
}

function acceptance(view: CustomerQuoteView): Content {
  const head: Content = { text: 'Acceptance', style: 'heading', margin: [0, 14, 0, 4] }
  if (isDraft(view)) {
    const text = 'There is nothing to sign yet. The quote itself has a number and a place for your signature.'
    return { unbreakable: true, stack: [head, { text }] }
  }
  const { quotedOn, issuedOn, validUntil, prices, customer } = view
  const options =
    prices.options.length === 0 ? '' : ' Options that I have ticked are added at the price beside them.'
  return {
    unbreakable: true,
    stack: [
      head,
      {
        text: `I accept ${inSentence(titleOf(view))}${revisionIn(view).length > 0 ? ',' : ''} of ${dayInWords(issuedOn ?? quotedOn)}, which stands until ${dayInWords(validUntil)}, for ${money(prices.grossPence)}${withTax(prices)}.${options}`,
      },
      {
        table: {
          widths: [1, 2, 3].map(() => (textWidthPt - 16) / 3),
          body: [[toSign(`Signed, for ${customer.name}`), toSign('Name in capitals'), toSign('Date')]],
        },
        layout: plain,
      },
    ],
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
