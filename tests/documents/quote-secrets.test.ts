import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inflateSync } from 'node:zlib'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../src-main/desk/desk.ts'
import { printQuote } from '../../src-main/desk/papers/quote-pdf.ts'
import { workUp } from '../../src-main/desk/quoting/work-up.ts'
import type { WorkedUp } from '../../src-main/desk/quoting/work-up.ts'
import type { Firm, PriceDetail } from '../../src-main/domain/firm.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import { answered } from '../answered.ts'
import { exifWithPlace, letters, segment } from '../unit/desk/photos/jpeg-for-tests.ts'
import { penceIn, readPdf } from './read-pdf.ts'

/** A word that stands wherever only the firm may look. */
const secret = 'Geheimzettel'
const base64 = (bytes: string | Uint8Array) => Buffer.from(bytes).toString('base64')

const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 20"><!-- ${secret} --><title>${secret}</title><desc>${secret}</desc><metadata>${secret}</metadata><text x="2" y="14" font-size="12">Shown</text></svg>`
/** A red patch of 8 by 4 dots. */
const plainJpeg =
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDACgcHiMeGSgjISMtKygwPGRBPDc3PHtYXUlkkYCZlo+AjIqgtObDoKrarYqMyP/L2u71' +
  '////m8H////6/+b9//j/2wBDASstLTw1PHZBQXb4pYyl+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4' +
  '+Pj4+Pj4+Pj/wAARCAAEAAgDAREAAhEBAxEB/8QAFAABAAAAAAAAAAAAAAAAAAAABP/EABQQAQAAAAAAAAAAAAAAAAAAAAD/xAAV' +
  'AQEBAAAAAAAAAAAAAAAAAAAEBf/EABQRAQAAAAAAAAAAAAAAAAAAAAD/2gAMAwEAAhEDEQA/ACjrD//Z'
const turned = withSegments(plainJpeg, [
  exifWithPlace(),
  segment(0xfe, letters(secret)),
  segment(0xe1, letters(`http:${secret}`)),
])
const png = withText(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
)

/** A PNG with a `tEXt` chunk after its head (33 bytes); its check sum is left at nought, which readers of pictures skip. */
function withText(plain: string): Uint8Array {
  const bytes = Buffer.from(plain, 'base64')
  const body = Buffer.from(`Comment\0${secret}`, 'latin1')
  const length = Buffer.alloc(4)
  length.writeUInt32BE(body.length)
  const chunk = Buffer.concat([length, Buffer.from('tEXt'), body, Buffer.alloc(4)])
  return Buffer.concat([bytes.subarray(0, 33), chunk, bytes.subarray(33)])
}

/** A JPEG with segments after its start, and more after its end. */
function withSegments(plain: string, segments: readonly (readonly number[])[]): Uint8Array {
  const bytes = Buffer.from(plain, 'base64')
  const more = Buffer.from(segments.flat())
  return Buffer.concat([bytes.subarray(0, 2), more, bytes.subarray(2), Buffer.from(secret)])
}

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}

/** The sample job with the secret in every field that is for the firm's eyes. */
function jobWithSecrets(detail: PriceDetail, logo: Firm['logo']) {
  const labour = { lineKey: 'labour-1', netPence: 13_337, reason: secret }
  return jobSchema.parse({
    ...sample,
    title: secret,
    jobId: secret,
    priceDetail: detail,
    firm: { ...sample.firm, logo },
    survey: { ...sample.survey, notes: secret, surveyedBy: secret },
    rooms: sample.rooms.map((room) => ({
      ...room,
      note: secret,
      photos: [{ photoId: 'p', caption: secret }],
    })),
    swaps: sample.swaps.map((swap) => ({
      ...swap,
      note: secret,
      existing: { ...swap.existing, note: secret },
      factors: [{ name: secret, value: 1 }],
    })),
    waivers: [{ gapKey: secret, reason: secret }],
    overrides: [labour],
    pricing: {
      taxTreatment: 'usual',
      rounding: 'document',
      markUps: [{ of: 'parts', by: 'margin', basisPoints: 3_333 }],
    },
  })
}

type CustomerPaper = {
  readonly what: string
  readonly print: (work: WorkedUp) => Promise<Uint8Array>
  readonly detail: PriceDetail
  readonly logo: NonNullable<Firm['logo']>
}

const issue = { number: 'Q-2026-0007', revision: 1, issuedOn: '2026-11-25' }

async function quoteOf(work: WorkedUp, issued?: typeof issue): Promise<Uint8Array> {
  return answered(await printQuote({ ...work, reference: 'SAMPLE-1', fileKey: secret }, issued)).bytes
}

/** Each paper that goes to a customer. */
const papers: readonly CustomerPaper[] = [
  {
    what: 'the draft of a quote, by line, with an SVG logo',
    print: (work) => quoteOf(work),
    detail: 'lines',
    logo: { mediaType: 'image/svg+xml', base64: base64(svg) },
  },
  {
    what: 'a quote by room, with a PNG logo',
    print: (work) => quoteOf(work, issue),
    detail: 'rooms',
    logo: { mediaType: 'image/png', base64: base64(png) },
  },
  {
    what: 'a quote as a total, with a JPEG logo',
    print: (work) => quoteOf(work, issue),
    detail: 'total',
    logo: { mediaType: 'image/jpeg', base64: base64(turned) },
  },
]

/** The bytes of a file and of each of its streams, unpacked. */
function everyPart(bytes: Uint8Array): readonly Buffer[] {
  const file = Buffer.from(bytes)
  const streams = [...file.toString('latin1').matchAll(/stream\r?\n/g)].flatMap(
    ({ index, 0: { length } }) => {
      const end = file.indexOf('endstream', index + length)
      if (end < 0 || file.subarray(index - 3, index).toString('latin1') === 'end') return []
      const body = file.subarray(index + length, end)
      return body[0] === 0x78 ? [inflateSync(body)] : [body]
    },
  )
  expect(streams.length).toBeGreaterThan(6)
  return [file, ...streams]
}

function holds(part: Buffer, word: string): boolean {
  const wide = Buffer.from(word, 'utf16le').swap16()
  return part.includes(word) || part.includes(wide) || part.includes(Buffer.from(word).toString('hex'))
}

/** What the file says of itself beside its pages: information, XMP, attachments, outline, and notes on its pages. */
async function besideThePages(bytes: Uint8Array): Promise<string> {
  const loading = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
  const file = await loading.promise
  const { info, metadata } = await file.getMetadata()
  expect(await file.getAttachments()).toBeNull()
  const notes = await Promise.all(
    Array.from({ length: file.numPages }, async (_, at) => (await file.getPage(at + 1)).getAnnotations()),
  )
  expect(notes.flat()).toEqual([])
  const told = JSON.stringify([info, metadata?.getRaw() ?? null, await file.getOutline()])
  await loading.destroy()
  return told
}

/** All that a customer may see of the money. */
function amountsFor({ quote }: WorkedUp): ReadonlySet<number> {
  const { lines, totals, options } = quote
  const byRoom = (section: (name: string) => boolean, swapId: string | null) =>
    lines
      .filter(
        (line) =>
          section(line.section) &&
          (swapId === null ? line.swapIds.length !== 1 : line.swapIds.join() === swapId),
      )
      .reduce((sum, { netPence }) => sum + netPence, 0)
  const inRoom = (name: string) => name !== 'travel' && name !== 'other'
  return new Set([
    ...lines.map(({ netPence }) => netPence),
    ...['emitter', 'parts', 'labour', 'travel', 'other'].map((name) => byTitle(quote, name)),
    ...[null, ...sample.swaps.map(({ swapId }) => swapId)].map((swapId) => byRoom(inRoom, swapId)),
    ...totals.taxes.flatMap(({ netPence, taxPence }) => [netPence, taxPence]),
    ...options.flatMap(({ netPence, taxPence = 0 }) => [netPence, netPence + taxPence]),
    totals.netPence,
    totals.grossPence,
    totals.depositPence,
    totals.grossPence - totals.depositPence,
  ])
}

function byTitle({ lines }: WorkedUp['quote'], section: string): number {
  return lines.filter((line) => line.section === section).reduce((sum, { netPence }) => sum + netPence, 0)
}

describe('cost, margin, suppliers and notes reach no customer', { timeout: 120_000 }, () => {
  it.each(papers)('$what', async ({ print, detail, logo }) => {
    const work = answered(await workUp(jobWithSecrets(detail, logo), desk))
    const { purchases, costPence, marginPence } = work.quote.internal
    expect(purchases.length).toBeGreaterThan(10)
    expect(JSON.stringify(work)).toContain(secret)
    const bytes = await print(work)
    const { text } = await readPdf(bytes)
    const words = `${text}\n${await besideThePages(bytes)}`
    const names = purchases.flatMap((one) => [one.supplierName, ...one.packs.map(({ code }) => code)])
    for (const name of [secret, ...names]) expect(words).not.toContain(name)
    expect(words).not.toMatch(/\b(margin|mark-up|supplier|merchant|our cost|van stock|waiver|override)/i)

    const parts = everyPart(bytes)
    const wrong = [secret, ...new Set(purchases.map(({ supplierName }) => supplierName))].filter((word) =>
      parts.some((part) => holds(part, word)),
    )
    expect(wrong).toEqual([])

    const allowed = amountsFor(work)
    for (const pence of [costPence, marginPence]) expect(allowed.has(pence)).toBe(false)
    expect(penceIn(text.replaceAll('\n', ' ')).filter((pence) => !allowed.has(pence))).toEqual([])
  })

  it('the search finds a secret where there is one: in text, in a stream, in what the file says of itself', async () => {
    const firm = { name: secret, addressLines: [] }
    const work = answered(await workUp(jobSchema.parse({ ...sample, firm }), desk))
    const bytes = await quoteOf(work)
    expect((await readPdf(bytes)).text).toContain(secret)
    expect(await besideThePages(bytes)).toContain(secret)
    expect(everyPart(bytes).some((part) => holds(part, secret))).toBe(true)
  })
})

describe('the file unpacked by a second reader', { timeout: 120_000 }, () => {
  it('is sound and holds no secret', async ({ skip }) => {
    if (spawnSync('qpdf', ['--version'], { timeout: 20_000 }).error !== undefined) {
      console.log('qpdf is not on this machine, so no second reader unpacked the PDF')
      skip('qpdf is not on this machine')
    }
    const folder = mkdtempSync(join(tmpdir(), 'tailpiece-secrets-'))
    try {
      for (const [at, { print, detail, logo }] of papers.entries()) {
        const work = answered(await workUp(jobWithSecrets(detail, logo), desk))
        const file = join(folder, `${at}.pdf`)
        writeFileSync(file, await print(work))
        const check = spawnSync('qpdf', ['--check', file], { encoding: 'utf8', timeout: 20_000 })
        expect(check.stdout).toContain('No syntax or stream encoding errors found')
        expect(check.status).toBe(0)
        const flat = spawnSync('qpdf', ['--qdf', '--object-streams=disable', file, '-'], {
          maxBuffer: 50_000_000,
          timeout: 20_000,
        })
        expect(flat.status).toBe(0)
        expect(flat.stdout.length).toBeGreaterThan(50_000)
        expect(holds(flat.stdout, secret)).toBe(false)
      }
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
