import fc from 'fast-check'
import PostalMime from 'postal-mime'
import { describe, expect, it } from 'vitest'
import { mailDraft } from '../../../../src-main/exchange/mail/draft.ts'
import type { MailDraft } from '../../../../src-main/exchange/mail/draft.ts'
import { answered, refused } from '../../../answered.ts'

const pdf = Uint8Array.from({ length: 5000 }, (_, nth) => (nth * 37 + (nth >> 3)) % 256)

function draftOf(changes: Partial<MailDraft> = {}): MailDraft {
  return {
    from: { name: 'Ψύλλας & Łukasz, Heating', address: 'office@test-heating.example.com' },
    to: [{ name: 'Żaneta Παπαδοπούλου', address: 'zaneta@example.com' }],
    subject: 'Quote Q-2026-0007: new radiator for the back bedroom – Ογδόντα ευρώ και κάτι ακόμη, ż ó ł w',
    text: 'Dear Żaneta,\n\nyour quote is attached.\n.\nFrom me to you.\n--mark-Part_1\n',
    attached: { fileName: 'Προσφορά Q-2026-0007 żółw "2".pdf', pdf },
    sentAt: '2026-03-02T09:30:00Z',
    messageId: 'quote-7-2@test-heating.example.com',
    boundary: 'mark7Q2',
    ...changes,
  }
}

const written = async (draft: MailDraft) => answered(await mailDraft(draft))
const textOf = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1')

describe('a mail draft', () => {
  it('read back by another reader is what was put in, the attachment byte for byte', async () => {
    const draft = draftOf()
    const read = await PostalMime.parse(await written(draft))
    expect(read.from).toMatchObject(draft.from)
    expect(read.to).toMatchObject(draft.to)
    expect(read.subject).toBe(draft.subject)
    expect(read.text?.replaceAll('\r\n', '\n')).toBe(draft.text)
    expect(read.messageId).toBe(`<${draft.messageId}>`)
    expect(read.date).toBe('2026-03-02T09:30:00.000Z')
    expect(read.headers.find(({ key }) => key === 'x-unsent')?.value).toBe('1')
    const [attachment, ...more] = read.attachments
    expect(more).toEqual([])
    expect(attachment?.filename).toBe(draft.attached.fileName)
    expect(attachment?.mimeType).toBe('application/pdf')
    expect(attachment?.disposition).toBe('attachment')
    expect(new Uint8Array(attachment?.content as ArrayBuffer)).toEqual(pdf)
  })

  it('is 7-bit text with CRLF at every line’s end, none longer than a mail program takes', async () => {
    const bytes = await written(draftOf())
    expect(bytes.every((byte) => byte < 128)).toBe(true)
    const text = textOf(bytes)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    // RFC 2045, 6.8: no more than 76; RFC 5322, 2.1.1: 78 for a header's.
    const lines = text.split('\r\n')
    const body = lines.slice(lines.indexOf(''))
    expect(Math.max(...body.map(({ length }) => length))).toBeLessThanOrEqual(76)
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(78)
    const head = lines.slice(0, lines.indexOf(''))
    expect(head).toContain('MIME-Version: 1.0')
    expect(head).toContain('X-Unsent: 1')
    expect(head).toContain('Date: Mon, 02 Mar 2026 09:30:00 +0000')
    expect(head.some((row) => row.startsWith('Subject: =?UTF-8?'))).toBe(true)
    expect(lines.at(-1)).toBe('')
  })

  it('is the same file for the same draft', async () => {
    expect(textOf(await written(draftOf()))).toBe(textOf(await written(draftOf())))
    expect(textOf(await written(draftOf({ boundary: 'other' })))).not.toBe(textOf(await written(draftOf())))
  })

  it('lets no name, subject or file name add a header', async () => {
    for (const bad of [
      'A\r\nBcc: thief@example.com',
      'A\nB',
      'A\rB',
      'A\u0000',
      'A\u0085B',
      'A\u2028B',
      'quote\u202efdp.exe',
    ]) {
      const person = { name: bad, address: 'a@example.com' }
      expect(refused(await mailDraft(draftOf({ from: person })))).toMatchObject({
        code: 'invalid',
        path: 'from.name',
      })
      expect(refused(await mailDraft(draftOf({ to: [...draftOf().to, person] }))).path).toBe('to[1].name')
      expect(refused(await mailDraft(draftOf({ subject: bad }))).path).toBe('subject')
      expect(refused(await mailDraft(draftOf({ attached: { fileName: bad, pdf } }))).path).toBe(
        'attached.fileName',
      )
    }
    expect(refused(await mailDraft(draftOf({ subject: 'A\r\nBcc: b' }))).message).toBe(
      '“A  Bcc: b” has a line break or another control character in it.',
    )
  })

  it('refuses what is no address, no file name, no moment and no boundary', async () => {
    for (const address of [
      '',
      'a',
      'a@b',
      'a b@example.com',
      'a@example.com\r\nBcc: b@example.com',
      'a@example.com, b@example.com',
      'a@exämple.com',
      `${'a'.repeat(250)}@example.com`,
    ]) {
      expect(refused(await mailDraft(draftOf({ to: [{ name: 'A', address }] }))).path).toBe('to[0].address')
      expect(refused(await mailDraft(draftOf({ from: { name: 'A', address } }))).path).toBe('from.address')
      expect(refused(await mailDraft(draftOf({ messageId: address }))).path).toBe('messageId')
    }
    expect(refused(await mailDraft(draftOf({ to: [] }))).path).toBe('to')
    for (const fileName of ['', '../quote.pdf', 'a\\b.pdf']) {
      expect(refused(await mailDraft(draftOf({ attached: { fileName, pdf } }))).path).toBe(
        'attached.fileName',
      )
    }
    for (const sentAt of ['', 'today', '2026-13-02T09:30:00Z', '2026-03-02']) {
      expect(refused(await mailDraft(draftOf({ sentAt }))).path).toBe('sentAt')
    }
    for (const boundary of ['', 'a b', 'a\r\nb', 'x'.repeat(41)]) {
      expect(refused(await mailDraft(draftOf({ boundary }))).path).toBe('boundary')
    }
  })

  it('keeps any name, subject, text and bytes', async () => {
    const anyText = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 90 })
      .map((text) => text.replace(/[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069\s]+/gu, ' ').trim())
      .filter((text) => text !== '')
    await fc.assert(
      fc.asyncProperty(anyText, anyText, fc.uint8Array({ maxLength: 400 }), async (subject, text, bytes) => {
        const draft = draftOf({ subject, text, attached: { fileName: 'quote.pdf', pdf: bytes } })
        const read = await PostalMime.parse(await written(draft))
        expect(read.subject).toBe(subject)
        expect(read.text?.trimEnd()).toBe(text)
        expect(new Uint8Array(read.attachments[0]?.content as ArrayBuffer)).toEqual(bytes)
        expect(read.headers.filter(({ key }) => key === 'bcc' || key === 'cc')).toEqual([])
      }),
    )
  })
})
