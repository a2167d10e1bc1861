import { spawnSync } from 'node:child_process'
import { readFile, rm } from 'node:fs/promises'
import { inflateSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../../src-main/desk/router.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import type { AfterJob } from '../../src-main/domain/follow-up/after-job.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import { refused } from '../answered.ts'
import {
  acceptedQuote,
  ask,
  begunFolder,
  commissioned,
  inTwoWindows,
  sampleJob,
  variations,
} from '../store/after-job/accepted-job.ts'
import { penceIn, readPdf, unbroken } from './read-pdf.ts'
import type { ReadBack } from './read-pdf.ts'

let begun: string
beforeAll(async () => {
  begun = await begunFolder()
})
afterAll(() => rm(begun, { recursive: true }))

const secret = 'Geheimzettel'
const kinds = ['finalAccount.pdf', 'commissioning.pdf', 'handover.pdf'] as const
type Kind = (typeof kinds)[number]

/** What happened, with a secret wherever only the firm may look. */
const after: AfterJob = {
  tasks: [{ taskId: 'hang', name: `Hang ${secret}`, count: 2, minutes: 77_777 }],
  parts: [{ name: `Tape ${secret}`, unit: 'm', planned: 5, used: 4, says: secret }],
  variations,
  commissioning: commissioned,
  guarantees: [
    { what: 'Towel rail and radiator', until: '2031-03-19', says: 'By their maker' },
    { what: 'Our work', until: '2028-03-19' },
  ],
  paidPence: 12_345,
  notes: secret,
}

const inParts: Partial<Job> = {
  pricing: {
    taxTreatment: 'usual',
    rounding: 'document',
    lineCategories: { labour: 'reduced' },
  },
}

type Printed = ReadBack & { readonly bytes: Uint8Array; readonly path: string }

async function printed(desk: Desk, kind: Kind, quoteId: string): Promise<Printed> {
  const { path } = await ask(desk, kind, { quoteId })
  const bytes = new Uint8Array(await readFile(path))
  return { ...(await readPdf(bytes)), bytes, path }
}

/** A job accepted and noted, and its papers. */
async function withPapers(
  { job = sampleJob, noted = after }: { readonly job?: Job; readonly noted?: AfterJob },
  story: (desk: Desk, quoteId: string) => Promise<void>,
): Promise<void> {
  await inTwoWindows(begun, async ([desk]) => {
    const quoteId = await acceptedQuote(desk, job)
    await ask(desk, 'afterJob.save', { quoteId, afterJob: noted })
    await story(desk, quoteId)
  })
}

/** The amounts at the ends of the rows that begin so. */
const ends = (text: string, begins: RegExp) =>
  text.split('\n').flatMap((row) => (begins.test(row) ? penceIn(row).slice(-1) : []))
const sum = (amounts: readonly number[]) => amounts.reduce((total, one) => total + one, 0)

describe('the final account on paper', { timeout: 60_000 }, () => {
  it('adds up to the penny from its own text: lines, tax at each rate, total, paid, left to pay', async () => {
    await withPapers({ job: { ...sampleJob, ...inParts } }, async (desk, quoteId) => {
      const { text } = await printed(desk, 'finalAccount.pdf', quoteId)
      // A line's amount stands on the first of its rows.
      const quoted = ends(text, /^The work of quote/)
      const since = ends(text, /^(One more isolating valve|The loft hatch)/)
      expect(quoted).toHaveLength(2)
      expect(since).toEqual([3_217, -1_501])
      const [net = 0] = ends(text, /^Total before VAT/)
      expect(sum([...quoted, ...since])).toBe(net)

      const taxRows = text.split('\n').filter((row) => /^VAT, .*% of £/.test(row))
      expect(taxRows).toHaveLength(2)
      for (const row of taxRows) {
        const [of = 0, tax = 0] = penceIn(row)
        const percent = Number(/(\d+)% of/.exec(row)?.[1])
        expect(tax).toBe(Math.round((of * percent) / 100))
        const charged = text
          .split('\n')
          .filter((line) => new RegExp(`\\s${percent}% −?£`).test(line))
          .flatMap((line) => penceIn(line).slice(-1))
        expect(sum(charged)).toBe(of)
      }
      const taxes = taxRows.map((row) => penceIn(row)[1] ?? 0)
      const [gross = 0] = ends(text, /^Total with VAT £/)
      expect(sum([net, ...taxes])).toBe(gross)
      const [paid = 0] = ends(text, /^Less what is paid/)
      expect(paid).toBe(-12_345)
      expect(ends(text, /^Still to pay £/)).toEqual([gross + paid])
    })
  })

  it('says of each variation when and how it was agreed, in whose words', async () => {
    await withPapers({}, async (desk, quoteId) => {
      const { told, info, pages } = await printed(desk, 'finalAccount.pdf', quoteId)
      expect(told).toContain('Agreed in writing on 16 March 2026: “Yes please, while you are there.”')
      expect(told).toContain('Agreed by word of mouth on 17 March 2026')
      expect(told).toContain(`The work of quote ${quoteId}`)
      expect(told).toContain('Accepted 4 March 2026')
      expect(told).toContain('This is a statement of account, not a VAT invoice.')
      expect(told).toContain('VAT is worked out once on the sum at each rate')
      expect(info['Title']).toBe(`Draft of final account for quote ${quoteId}`)
      expect(pages[0]?.join('\n')).toContain('Draft, the job is not closed yet')
    })
  })

  it('is no draft once the job is closed, and bears that day', async () => {
    await withPapers({}, async (desk, quoteId) => {
      await ask(desk, 'afterJob.close', { quoteId, onDay: '2026-03-19' })
      const { told, info } = await printed({ ...desk, today: '2026-05-01' }, 'finalAccount.pdf', quoteId)
      expect(info['Title']).toBe(`Final account for quote ${quoteId}`)
      expect(told).toContain('19 March 2026')
      expect(told).not.toMatch(/draft|1 May/i)
    })
  })

  it('says so when nothing is left, and when too much was paid', async () => {
    const noted = { ...after, variations: [] }
    await withPapers({ noted }, async (desk, quoteId) => {
      const { grossPence } = await ask(desk, 'afterJob.account', { quoteId })
      await ask(desk, 'afterJob.save', { quoteId, afterJob: { ...noted, paidPence: grossPence } })
      const even = (await printed(desk, 'finalAccount.pdf', quoteId)).told
      expect(even).toContain('Paid in full, with thanks.')
      expect(even).toContain('Nothing was added or left out.')
      await ask(desk, 'afterJob.save', { quoteId, afterJob: { ...noted, paidPence: grossPence + 250 } })
      const over = await printed(desk, 'finalAccount.pdf', quoteId)
      expect(over.told).toContain('You have paid £2.50 more than the job came to; it is yours.')
      expect(ends(over.text, /^We owe you £/)).toEqual([250])
    })
  })

  it('leaves reverse-charged VAT to the customer, in the words the law wants', async () => {
    const pricing = { taxTreatment: 'reverseCharge', rounding: 'document' } as const
    const one = variations.slice(0, 1).map((each) => ({ ...each, rateKey: 'reverseCharge' as const }))
    await withPapers(
      { job: { ...sampleJob, pricing }, noted: { ...after, variations: one } },
      async (desk, quoteId) => {
        const { told, text } = await printed(desk, 'finalAccount.pdf', quoteId)
        const [net = 0] = ends(text, /^Total before VAT/)
        expect(ends(text, /^Total to pay us £/)).toEqual([net])
        // VAT Regulations 1995 (SI 1995/2518) regulation 13A: the amount, and that the customer accounts for it.
        expect(told).toContain('Reverse charge: customer to pay the VAT to HMRC.')
        const amounts = penceIn(/VAT to account for on .*? It is not/.exec(told)?.[0] ?? '')
        expect(amounts).toEqual([net, Math.round(net / 5)])
      },
    )
  })
})

describe('the commissioning record', { timeout: 60_000 }, () => {
  it('holds what was done and measured, who did it and when, and lines to sign', async () => {
    await withPapers({}, async (desk, quoteId) => {
      const { told, text } = await printed(desk, 'commissioning.pdf', quoteId)
      for (const says of [
        '18 March 2026',
        'A. Fitter',
        'Cleaned with a chemical cleaner and flushed. Ran clear after twenty minutes',
        '1.5 litres of Sample inhibitor',
        'Tested, and strong enough',
        '3 bar for 30 minutes',
        // By hand: 3 - 2.9 bar.
        '2.9 bar. It fell by 0.1 bar.',
        '1.2 bar',
        'The pump is on its second speed.',
        'Signed, for Sampleton Test Heating',
        'Signed, for Robin Sample',
      ])
        expect(told).toContain(says)
      // By hand: 60 - 48.5 is 11.5 K.
      expect(text).toMatch(/Room 1 .*60 °C 48\.5 °C 11\.5 K 1\.25/)
      expect(text).toMatch(/Room 2 .*– – – –/)
      expect(text).toMatch(/Joints looked over for leaks Yes/)
      expect(text).toMatch(/Filling loop shut and taken off Yes/)
    })
  })

  it('says what was not done as plainly', async () => {
    const commissioning = {
      ...commissioned,
      flush: { how: 'none' as const },
      dose: { product: '', litres: 0 },
      pressureTest: { testBar: 0, minutes: 0, endBar: 0 },
      balancing: [],
      leaksLookedFor: false,
      fillingLoopOff: false,
    }
    await withPapers({ noted: { ...after, commissioning } }, async (desk, quoteId) => {
      const { text } = await printed(desk, 'commissioning.pdf', quoteId)
      for (const row of ['Cleaning Not cleaned', 'Water treatment None added', 'Pressure test None was made'])
        expect(text).toContain(row)
      expect(text).toMatch(/leaks No\nFilling loop shut and taken off No/)
      expect(text).not.toMatch(/Balancing|Tested/)
    })
  })

  it('is not printed where nothing is noted', async () => {
    const { commissioning: _none, ...noted } = after
    await withPapers({ noted }, async (desk, quoteId) => {
      expect(refused(await answer('commissioning.pdf', { quoteId }, desk))).toMatchObject({
        code: 'conflict',
        message: 'Nothing is noted of the commissioning yet, so there is no record to print.',
      })
    })
  })
})

describe('the handover sheet', { timeout: 60_000 }, () => {
  it('says what was fitted, how it is used and looked after, and whom to ring', async () => {
    await withPapers({}, async (desk, quoteId) => {
      const { text } = await printed(desk, 'handover.pdf', quoteId)
      const told = unbroken(text)
      for (const says of [
        'Sampleton Test Heating · 01632 960003 · office@sampleton.example.com',
        'Curved chrome towel rail',
        'The thermostatic valve is the one with a numbered head.',
        'The lockshield valve is the one under a plain cap',
        '(1.2 bar when we left)',
        'Chrome: wipe it',
        'White enamel: wipe it',
        'Towel rail and radiator',
        '19 March 2031',
        'By their maker',
        'hot enough to burn',
        'holds Sample inhibitor against rust',
        'Only a registered gas engineer',
        'qualified electrician',
        'Signed, for Robin Sample',
      ])
        expect(told).toContain(says)
    })
  })

  it('leaves out guarantees where there are none, and fits its words to the house', async () => {
    const system = { ...sampleJob.survey.system, kind: 'openVented' as const }
    const job = jobSchema.parse({
      ...sampleJob,
      survey: { ...sampleJob.survey, system, frailOrChildren: true },
      rooms: sampleJob.rooms.map((room) => ({ ...room, holdsThermostat: true })),
    })
    await withPapers({ job, noted: { tasks: [], parts: [], variations: [] } }, async (desk, quoteId) => {
      const { told } = await printed(desk, 'handover.pdf', quoteId)
      expect(told).not.toMatch(/Guarantees|numbered head|pressure gauge/)
      expect(told).toContain(
        'the room’s thermostat turns the heating on and off, so leave both valves open there',
      )
      expect(told).toContain('The tank in the loft makes up the water by itself.')
      expect(told).toContain('anybody who would not pull away by themselves')
      expect(told).toContain('may hold chemicals against rust')
    })
  })
})

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
  expect(streams.length).toBeGreaterThan(3)
  return [file, ...streams]
}

const holds = (part: Buffer, word: string) =>
  part.includes(word) ||
  part.includes(Buffer.from(word, 'utf16le').swap16()) ||
  part.includes(Buffer.from(word).toString('hex'))

describe('cost, margin, suppliers, hours and notes reach no customer', { timeout: 120_000 }, () => {
  const secretive = jobSchema.parse({
    ...sampleJob,
    title: secret,
    survey: { ...sampleJob.survey, notes: secret, surveyedBy: secret },
    rooms: sampleJob.rooms.map((room) => ({ ...room, note: secret })),
    swaps: sampleJob.swaps.map((swap) => ({ ...swap, note: secret })),
  })

  it.each(kinds)('%s holds none of it, in its text, its streams or what it says of itself', async (kind) => {
    await withPapers({ job: secretive }, async (desk, quoteId) => {
      const quote = await ask(desk, 'quote.build', { job: secretive })
      const { costPence, marginPence, labourCostPence, purchases } = quote.internal
      const { text, bytes, info, path } = await printed(desk, kind, quoteId)
      const words = `${text}\n${JSON.stringify(info)}`
      const names = [
        ...new Set(purchases.flatMap((one) => [one.supplierName, ...one.packs.map(({ code }) => code)])),
      ]
      expect(names.length).toBeGreaterThan(10)
      for (const name of [secret, ...names]) expect(words).not.toContain(name)
      expect(words).not.toMatch(/\b(margin|mark-up|supplier|merchant|our cost|van stock|hours?|labour)\b/i)
      expect(words).not.toContain('77,777')
      const amounts = penceIn(text.replaceAll('\n', ' '))
      for (const pence of [costPence, marginPence, labourCostPence, quote.labour.expectedMin])
        expect(amounts).not.toContain(pence)
      expect(everyPart(bytes).filter((part) => [secret, ...names].some((word) => holds(part, word)))).toEqual(
        [],
      )
      expect(info['Producer']).toBe('Tailpiece')

      const check = spawnSync('qpdf', ['--check', path], { encoding: 'utf8', timeout: 20_000 })
      if (check.error !== undefined)
        console.log('qpdf is not on this machine, so no second reader checked the PDF')
      else {
        expect(check.stdout).toContain('No syntax or stream encoding errors found')
        expect(check.status).toBe(0)
      }
    })
  })

  it('the search finds the secret where it does stand', async () => {
    const noted = { ...after, guarantees: [{ what: secret, until: '2030-01-01' }] }
    await withPapers({ noted }, async (desk, quoteId) => {
      expect((await printed(desk, 'handover.pdf', quoteId)).text).toContain(secret)
    })
  })
})
