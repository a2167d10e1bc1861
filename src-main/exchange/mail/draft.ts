import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

export type MailAddress = { readonly name: string; readonly address: string }

/** A mail with one paper, for a mail program to open, change and send. What would differ from run to run is given. */
export type MailDraft = {
  readonly from: MailAddress
  readonly to: readonly MailAddress[]
  readonly subject: string
  readonly text: string
  readonly attached: { readonly fileName: string; readonly pdf: Uint8Array }
  /** A moment in UTC, as `2026-03-02T09:30:00Z`. */
  readonly sentAt: string
  /** `something@example.com`, unlike that of any other mail. */
  readonly messageId: string
  /** Letters and digits that part the mail's pieces. */
  readonly boundary: string
}

/**
 * The draft as an `.eml` file (RFC 5322, RFC 2045): `X-Unsent: 1` makes a mail program open it for sending (practice, no published
 * standard). Names and subject in any letters are encoded (RFC 2047, RFC 2231). A line break in a name is refused, so that nobody's
 * name adds a header.
 */
export async function mailDraft(draft: MailDraft): Promise<Outcome<Uint8Array>> {
  const wrong = firstWrong(draft)
  if (wrong !== null) return wrong
  const { from, to, subject, text, attached, sentAt, messageId, boundary } = draft
  const { default: MailComposer } = await import('nodemailer/lib/mail-composer')
  const content = Buffer.from(attached.pdf)
  const mail = new MailComposer({
    from: { ...from },
    to: to.map((one) => ({ ...one })),
    subject,
    text: text.toWellFormed().replace(/\r\n|\r|\n/g, '\r\n'),
    textEncoding: 'base64',
    date: new Date(sentAt),
    messageId: `<${messageId}>`,
    headers: { 'X-Unsent': '1' },
    attachments: [
      { filename: attached.fileName, content, contentType: 'application/pdf', encoding: 'base64' },
    ],
    disableFileAccess: true,
    disableUrlAccess: true,
    baseBoundary: boundary,
  })
  return accept(new Uint8Array(await mail.compile().build()))
}

/** Control characters, line separators, half letters, and signs that turn the reading direction of a name. */
const forbidden = /[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u

/** An address as RFC 5321 lets every mail program take it: ASCII, no quotes and no comment. */
const addressForm =
  /^(?=.{3,254}$)[\w!#$%&'*+/=?^`{|}~-]+(\.[\w!#$%&'*+/=?^`{|}~-]+)*@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+$/

function firstWrong(draft: MailDraft): Outcome<Uint8Array> | null {
  const { from, to, subject, attached, sentAt, messageId, boundary } = draft
  if (to.length === 0) return refuse('invalid', 'A mail goes to at least one address.', 'to')
  const people = [{ ...from, path: 'from' }, ...to.map((one, nth) => ({ ...one, path: `to[${nth}]` }))]
  const texts = [
    ...people.map(({ name, path }) => ({ text: name, path: `${path}.name` })),
    { text: subject, path: 'subject' },
    { text: attached.fileName, path: 'attached.fileName' },
  ]
  for (const { text, path } of texts) if (forbidden.test(text)) return unwritable(text, path)
  for (const { address, path } of people)
    if (!addressForm.test(address)) return noAddress(address, `${path}.address`)
  if (attached.fileName === '' || /[/\\]/.test(attached.fileName)) {
    return refuse('invalid', 'The attachment needs a file name, without a folder.', 'attached.fileName')
  }
  if (!addressForm.test(messageId)) return noAddress(messageId, 'messageId')
  if (!/^[A-Za-z0-9]{1,40}$/.test(boundary)) {
    return refuse('invalid', 'A boundary is 1 to 40 letters and digits.', 'boundary')
  }
  const isMoment =
    /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(sentAt) && !Number.isNaN(Date.parse(sentAt))
  if (isMoment) return null
  return refuse(
    'invalid',
    `“${shown(sentAt)}” is no moment; it would be written as 2026-03-02T09:30:00Z.`,
    'sentAt',
  )
}

function unwritable(text: string, path: string): Outcome<Uint8Array> {
  const next = 'Type it again on one line.'
  return refuse(
    'invalid',
    `“${shown(text)}” has a line break or another control character in it.`,
    path,
    next,
  )
}

function noAddress(address: string, path: string): Outcome<Uint8Array> {
  return refuse(
    'invalid',
    `“${shown(address)}” is no mail address; it would look like name@example.com.`,
    path,
  )
}

function shown(text: string): string {
  return Array.from(text.replace(new RegExp(forbidden, 'gu'), ' '))
    .slice(0, 80)
    .join('')
}
