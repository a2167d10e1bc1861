import type { Catalogue } from '../../domain/catalogue.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Firm } from '../../domain/firm.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { PickList, Quote } from '../../domain/quote.ts'
import type { SetOut } from '../../domain/set-out.ts'
import type { TakeOff } from '../../domain/take-off.ts'
import { buildPickList } from '../../engine/quote/pick-list.ts'
import { buildQuote } from '../../engine/quote/build-quote.ts'
import { overrideParts } from '../../engine/quote/override-parts.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import { shelfOf } from '../../engine/takeoff/shelf.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { takeOff } from '../../engine/takeoff/take-off.ts'
import type { PricedTakeOff } from '../../engine/takeoff/take-off.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { checkJob } from '../jobs/check-job.ts'
import { withLaterFigures } from './kept-figures.ts'
import { placeSwaps } from './place-swaps.ts'
import type { JobFacts, PlacedSwap } from '../../engine/takeoff/job-facts.ts'

/** A job with everything that was worked out for it, for papers and lists. */
export type WorkedUp = {
  readonly job: Job
  readonly firm: Firm | null
  readonly quote: Quote
  readonly pickList: PickList
  readonly takeOff: TakeOff
  /** By swap. */
  readonly setOuts: Readonly<Record<string, SetOut>>
  /** By swap. */
  readonly emitters: Readonly<Record<string, Emitter>>
  readonly catalogue: Catalogue
  readonly figures: Figures
  readonly quotedOn: string
  /** What the lists were worked out from, so that a pick list can be made another way. */
  readonly ground: Pick<Prepared, 'placed' | 'shelf'> & {
    readonly facts: JobFacts
    readonly parts: PricedTakeOff
  }
}

/** What every answer about a job starts from: checked, with its figures, its catalogue and its swaps set out. */
export type Prepared = {
  readonly job: Job
  readonly quotedOn: string
  readonly figures: Figures
  readonly catalogue: Catalogue
  readonly shelf: Shelf
  readonly placed: readonly PlacedSwap[]
}

export async function prepare(job: Job, desk: Desk): Promise<Outcome<Prepared>> {
  const quotedOn = job.quotedOn ?? desk.today
  const figures = await figuresInForce(desk, quotedOn, job.figures)
  if (!figures.ok) return figures
  const catalogue = await catalogueOf(desk, quotedOn)
  return prepareFrom({ job, quotedOn, figures: figures.value, catalogue })
}

type Given = Pick<Prepared, 'job' | 'quotedOn' | 'figures' | 'catalogue'>

/** The same from figures and a catalogue that are there already. */
export function prepareFrom(from: Given): Outcome<Prepared> {
  const checked = checkJob(from.job, from.catalogue)
  if (!checked.ok) return checked
  const placed = placeSwaps(from.job, from.catalogue, from.figures)
  return placed.ok
    ? accept({ ...from, shelf: shelfOf(from.catalogue, from.job.fills), placed: placed.value })
    : placed
}

/** The whole of it: parts, labour, money and set-out of one job. */
export async function workUp(job: Job, desk: Desk): Promise<Outcome<WorkedUp>> {
  const prepared = await prepare(job, desk)
  if (!prepared.ok) return prepared
  return workFrom(prepared.value, job.firm ?? (await firmOfDesk(desk)))
}

function workFrom(
  { job, figures, placed, shelf, catalogue, quotedOn }: Prepared,
  firm: Firm | null,
): Outcome<WorkedUp> {
  const facts = jobFacts(job, placed, figures)
  const listed = overrideParts(takeOff(facts, shelf, figures), job.overrides ?? [], { shelf, figures })
  if (!listed.ok) return listed
  const parts = listed.value
  const quote = buildQuote({ job, placed, facts, parts, figures })
  if (!quote.ok) return quote
  return accept({
    job,
    firm,
    quote: quote.value,
    pickList: buildPickList(parts, quote.value, { placed, facts, figures }),
    takeOff: parts.takeOff,
    setOuts: Object.fromEntries(placed.map(({ swap, setOut }) => [swap.swapId, setOut])),
    emitters: Object.fromEntries(placed.map(({ swap, emitter }) => [swap.swapId, emitter])),
    catalogue,
    figures,
    quotedOn,
    ground: { placed, shelf, facts, parts },
  })
}

async function firmOfDesk(desk: Desk): Promise<Firm | null> {
  if (desk.store === null) return null
  const { reading } = await import('../../store/store.ts')
  const { readFirm } = await import('../../store/firm.ts')
  return reading(desk.store, readFirm)
}

/** An issued quote as it stood when it was issued: its own job, prices, figures and answer, whatever the catalogue says now. */
export async function keptWork(quoteId: string, desk: Desk): Promise<Outcome<WorkedUp>> {
  if (desk.store === null)
    return refuse('refused', 'An issued quote needs a data folder, and none is open.', 'quoteId')
  const { reading } = await import('../../store/store.ts')
  const { readIssued } = await import('../../store/quotes.ts')
  const kept = await reading(desk.store, (tx) => readIssued(tx, quoteId))
  if (kept === null) return refuse('not-found', `There is no issued quote called ${quoteId}.`, 'quoteId')
  const { job, catalogue, quote, pickList } = kept.snapshot
  const quotedOn = job.quotedOn ?? kept.issuedOn
  const now = await figuresInForce(desk, quotedOn)
  if (!now.ok) return now
  const figures = withLaterFigures(kept.snapshot.figures, now.value)
  const prepared = prepareFrom({ job, figures, catalogue, quotedOn })
  if (!prepared.ok) return prepared
  const worked = workFrom(prepared.value, job.firm ?? null)
  if (!worked.ok) return worked
  return accept({ ...worked.value, quote, pickList: pickList ?? worked.value.pickList })
}
