import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Firm } from '../../../../src-main/domain/firm.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { ioRefusal } from '../../../../src-main/desk/papers/io-sentence.ts'
import { paperRead } from '../../../../src-main/desk/papers/paper-read.ts'
import { pickListPdf } from '../../../../src-main/desk/papers/pick-list-pdf.ts'
import { quotePdf } from '../../../../src-main/desk/papers/quote-pdf.ts'
import { setOutPdf } from '../../../../src-main/desk/papers/set-out-pdf.ts'
import { writePaper } from '../../../../src-main/desk/papers/write-paper.ts'
import { answered, refused } from '../../../answered.ts'
import { readPdf, unbroken } from '../../../documents/read-pdf.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailpiece-papers-'))
})
afterEach(() => {
  rmSync(folder, { recursive: true, force: true })
})

const job: Job = jobSchema.parse(sample)
const pdf = { bytes: new TextEncoder().encode('%PDF-1.7 test'), pages: 1 }

function deskAt(changes: Partial<Desk> = {}): Desk {
  return {
    today: '2026-11-25',
    now: () => '2026-11-25T19:00:00Z',
    store: null,
    dataFolder: null,
    papersFolder: join(folder, 'papers'),
    mayChoosePath: true,
    ...changes,
  }
}

describe('where a paper goes', () => {
  it('goes to the papers folder, which is made, under a name that is safe', async () => {
    const paper = answered(await writePaper(pdf, { out: undefined, name: 'quote-../A b\\c:d' }, deskAt()))
    expect(paper).toEqual({ path: join(folder, 'papers', 'quote-..-A-b-c-d.pdf'), pages: 1, bytes: 13 })
    expect(readdirSync(join(folder, 'papers'))).toEqual(['quote-..-A-b-c-d.pdf'])
  })

  it('goes where the terminal says, and nowhere else when another door names a path', async () => {
    const out = join(folder, 'mine.pdf')
    expect(answered(await writePaper(pdf, { out, name: 'x' }, deskAt())).path).toBe(out)
    const problem = refused(await writePaper(pdf, { out, name: 'x' }, deskAt({ mayChoosePath: false })))
    expect(problem).toMatchObject({ code: 'refused', path: 'out' })
  })

  it('writes over an older PDF, but not over anything else', async () => {
    const out = join(folder, 'old.pdf')
    writeFileSync(out, '%PDF-1.3 old')
    answered(await writePaper(pdf, { out, name: 'x' }, deskAt()))
    expect(readFileSync(out, 'utf8')).toBe('%PDF-1.7 test')
    const data = join(folder, 'tailpiece.db')
    writeFileSync(data, 'SQLite format 3')
    expect(refused(await writePaper(pdf, { out: data, name: 'x' }, deskAt()))).toMatchObject({
      code: 'conflict',
    })
    expect(readFileSync(data, 'utf8')).toBe('SQLite format 3')
  })

  it('says so in a sentence when the folder is missing, is a file, or stands in the file’s place', async () => {
    const missing = refused(await writePaper(pdf, { out: join(folder, 'no', 'a.pdf'), name: 'x' }, deskAt()))
    expect(missing).toMatchObject({
      code: 'io',
      path: 'out',
      message: `There is no folder ${join(folder, 'no')}.`,
    })
    writeFileSync(join(folder, 'file'), '')
    const under = refused(await writePaper(pdf, { out: join(folder, 'file', 'a.pdf'), name: 'x' }, deskAt()))
    expect(under.message).toBe(`${join(folder, 'file')} is not a folder.`)
    mkdirSync(join(folder, 'there.pdf'))
    const taken = refused(await writePaper(pdf, { out: join(folder, 'there.pdf'), name: 'x' }, deskAt()))
    expect(taken.message).toContain('is a folder')
  })

  it('says so when the folder may not be written in', async ({ skip }) => {
    if (process.getuid?.() === 0) {
      console.log('This runs as the superuser, who may write anywhere, so no refused folder was tried')
      skip('the superuser may write anywhere')
    }
    chmodSync(folder, 0o500)
    const problem = refused(await writePaper(pdf, { out: join(folder, 'a.pdf'), name: 'x' }, deskAt()))
    chmodSync(folder, 0o700)
    expect(problem.message).toBe(`You may not write in ${folder}.`)
  })

  it.each([
    ['ENOSPC', 'The disk is full'],
    ['EDQUOT', 'The disk is full'],
    ['EACCES', 'You may not write'],
    ['EROFS', 'can only be read'],
    ['EBUSY', 'open in another program'],
    ['EIO', 'cannot be reached (EIO)'],
  ])('turns the system’s %s into “%s”', (code, says) => {
    const error = Object.assign(new Error(code), { code, errno: -1 })
    const problem = refused(ioRefusal(error, '/some/where/a.pdf', 'out'))
    expect(problem).toMatchObject({ code: 'io', path: 'out' })
    expect(problem.message).toContain(says)
    expect(problem.next).toBeTruthy()
  })

  it('throws on what is our own mistake', () => {
    expect(() => ioRefusal(new TypeError('ours'), '/a.pdf')).toThrow('ours')
  })

  it('leaves nothing half written behind when moving into place fails', async () => {
    const out = join(folder, 'loop.pdf')
    symlinkSync(out, out)
    const problem = refused(await writePaper(pdf, { out, name: 'x' }, deskAt()))
    expect(problem.code).toBe('io')
    expect(readdirSync(folder)).toEqual(['loop.pdf'])
  })
})

describe('a paper read back', () => {
  it('comes as it was written, and is refused by name when it is not there', async () => {
    answered(await writePaper(pdf, { out: undefined, name: 'quote-1' }, deskAt()))
    const read = answered(await paperRead({ name: 'quote-1.pdf' }, deskAt()))
    expect(Buffer.from(read.base64, 'base64').toString()).toBe('%PDF-1.7 test')
    expect(refused(await paperRead({ name: 'other.pdf' }, deskAt()))).toMatchObject({
      code: 'not-found',
      path: 'name',
    })
  })
})

describe('the three papers of the sample job', { timeout: 60_000 }, () => {
  it('are written with as many pages and bytes as they say', async () => {
    for (const print of [quotePdf, pickListPdf, setOutPdf]) {
      const paper = answered(await print({ job }, deskAt()))
      const bytes = readFileSync(paper.path)
      expect(bytes).toHaveLength(paper.bytes)
      expect((await readPdf(bytes)).pages).toHaveLength(paper.pages)
    }
    expect(readdirSync(join(folder, 'papers')).toSorted()).toEqual([
      'pick-list-sample-two-rooms.pdf',
      'quote-sample-two-rooms.pdf',
      'set-out-sample-two-rooms.pdf',
    ])
  })

  it('have one set-out page a swap, with the drawing’s figures among them', async () => {
    const paper = answered(await setOutPdf({ job }, deskAt()))
    expect(paper.pages).toBe(job.swaps.length)
    const { pages } = await readPdf(readFileSync(paper.path))
    expect(pages[0]?.join('\n')).toContain('Bathroom: curved towel rail')
    expect(pages[1]?.join('\n')).toContain('Back bedroom: double panel radiator')
    // The wall's own width stands in the drawing alone.
    expect(pages[0]?.join('\n')).toMatch(/\b1800\b/)
    expect(pages[1]?.join('\n')).toMatch(/\b3600\b/)
  })

  it('name no supplier on the customer’s one, and every supplier on the van’s', async () => {
    const quote = await readPdf(readFileSync(answered(await quotePdf({ job }, deskAt())).path))
    const list = await readPdf(readFileSync(answered(await pickListPdf({ job }, deskAt())).path))
    const { workUp } = await import('../../../../src-main/desk/quoting/work-up.ts')
    const { pickList } = answered(await workUp(job, deskAt()))
    expect(pickList.suppliers.length).toBeGreaterThan(0)
    for (const { name } of pickList.suppliers) {
      expect(list.text).toContain(name)
      expect(quote.text).not.toContain(name)
    }
  })

  it('leave the job as it was given', async () => {
    const before = JSON.stringify(job)
    answered(await quotePdf({ job }, deskAt()))
    expect(JSON.stringify(job)).toBe(before)
  })
})

describe('a paper is refused', { timeout: 60_000 }, () => {
  it('while nobody says who the quote is from', async () => {
    const { firm: _, ...nobody } = job
    expect(refused(await quotePdf({ job: nobody }, deskAt()))).toMatchObject({
      code: 'invalid',
      path: 'job.firm',
    })
  })

  it('while a part is missing that nobody let stand; the pick list prints all the same and says so', async () => {
    const swaps = job.swaps.map((swap) => ({ ...swap, elementW: 2999 }))
    const { workUp } = await import('../../../../src-main/desk/quoting/work-up.ts')
    const { quote } = answered(await workUp({ ...job, swaps }, deskAt()))
    const open = quote.gaps.filter((gap) => gap.waived === undefined)
    expect(open.length).toBeGreaterThan(0)
    const outcome = await quotePdf({ job: { ...job, swaps } }, deskAt())
    if (outcome.ok) throw new Error('The quote went out with a part missing')
    expect(outcome.problems.map((problem) => problem.code)).toEqual(open.map(() => 'gap'))
    expect(outcome.problems.every((problem) => problem.next !== undefined)).toBe(true)
    const list = answered(await pickListPdf({ job: { ...job, swaps } }, deskAt()))
    expect((await readPdf(readFileSync(list.path))).text).toContain('Missing from this list')
    const waivers = open.map(({ gapKey }) => ({ gapKey, reason: 'the customer has them' }))
    const paper = answered(await quotePdf({ job: { ...job, swaps, waivers } }, deskAt()))
    const text = unbroken((await readPdf(readFileSync(paper.path))).text)
    expect(text).toContain('not in this price.')
    expect(text).not.toContain('the customer has them')
  })

  it('while a job has no swaps to set out', async () => {
    const problem = refused(await setOutPdf({ job: { ...job, swaps: [] } }, deskAt()))
    expect(problem).toMatchObject({ code: 'invalid', path: 'job.swaps' })
    expect(problem.message).toContain('nothing to set out')
  })

  it('when a name is in letters that the typeface does not have', async () => {
    const customer = { ...job.customer, name: '王小明' }
    const problem = refused(await quotePdf({ job: { ...job, customer } }, deskAt()))
    expect(problem).toMatchObject({ code: 'impossible' })
    expect(problem.message).toContain('“王” in “王小明”')
  })

  it('before it is worked out where the door lets nobody choose a path', async () => {
    const out = join(folder, 'a.pdf')
    const problem = refused(await quotePdf({ job, out }, deskAt({ mayChoosePath: false })))
    expect(problem).toMatchObject({ code: 'refused', path: 'out' })
    expect(readdirSync(folder)).toEqual([])
  })
})

const onePixelPng =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='
const base64 = (text: string) => Buffer.from(text).toString('base64')

function withLogo(logo: NonNullable<Firm['logo']>): Job {
  if (job.firm === undefined) throw new Error('The sample job has a firm')
  return { ...job, firm: { ...job.firm, logo } }
}

describe('the firm’s logo', { timeout: 60_000 }, () => {
  it('prints as PNG and as SVG, whatever typeface the SVG asks for', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 20"><text x="2" y="14" font-family="Somewhat Fancy" font-size="12">LogoWord</text></svg>'
    answered(await quotePdf({ job: withLogo({ mediaType: 'image/png', base64: onePixelPng }) }, deskAt()))
    const paper = answered(
      await quotePdf({ job: withLogo({ mediaType: 'image/svg+xml', base64: base64(svg) }) }, deskAt()),
    )
    expect((await readPdf(readFileSync(paper.path))).text).toContain('LogoWord')
  })

  it.each([
    ['a PNG that is none', { mediaType: 'image/png', base64: base64('no picture') }],
    ['a JPEG that is none', { mediaType: 'image/jpeg', base64: onePixelPng.slice(0, 40) }],
    ['an SVG that is none', { mediaType: 'image/svg+xml', base64: base64('<html>') }],
    [
      'an SVG that takes in a file of this machine',
      {
        mediaType: 'image/svg+xml',
        base64: base64(
          '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><image href="/etc/hostname"/></svg>',
        ),
      },
    ],
    [
      'an SVG that takes in a page of the net',
      {
        mediaType: 'image/svg+xml',
        base64: base64(
          '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><image xlink:href = "https://example.com/a.png"/></svg>',
        ),
      },
    ],
  ] as const)('is refused in a sentence: %s', async (_, logo) => {
    const problem = refused(await quotePdf({ job: withLogo(logo) }, deskAt()))
    expect(problem).toMatchObject({ code: 'invalid', path: 'job.firm.logo' })
    expect(problem.message).toContain('logo cannot be printed')
  })
})
