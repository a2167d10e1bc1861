import { because, given } from '../../domain/derivation.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { taxCategory } from '../../domain/pricing.ts'
import type { Discount } from '../../domain/pricing.ts'
import type { Swap } from '../../domain/job.ts'
import type { QuoteLine } from '../../domain/quote.ts'
import { allocate } from '../money/allocate.ts'
import { sharePence } from '../money/price.ts'

type Base = { readonly rateKey: string; readonly netPence: number }

const sectionsOf: Readonly<Record<NonNullable<Discount['of']>, readonly QuoteLine['section'][]>> = {
  all: ['emitter', 'parts', 'labour', 'travel', 'other'],
  parts: ['emitter', 'parts'],
  labour: ['labour'],
}

/**
 * Discounts as lines of their own, each below nothing. A share is of the lines before any discount, so that the order of
 * discounts does not matter. A discount over lines that bear different tax is parted among them by their sums, for it
 * bears the tax of what it is taken from. Refuses a discount of more than there is.
 * @param lines the priced lines before any discount, each at least 0, with their categories of tax
 * @param discounts what is taken off; one of a room is taken off the lines that stand for that room's swaps alone
 * @param swaps the job's swaps with their rooms, for discounts of a room
 * @source EN 16931-1: an allowance on the document bears a VAT category and rate of its own (BR-32, BR-CO-13)
 * @example discountLines([{ section: 'labour', rateKey: 'standard', netPence: 9999 }], [{ kind: 'percent', name: 'Neighbour', basisPoints: 1000, of: 'labour' }]).value[0].netPence // => -1000
 */
export function discountLines(
  lines: readonly QuoteLine[],
  discounts: readonly Discount[],
  swaps: readonly Pick<Swap, 'swapId' | 'roomId'>[] = [],
): Outcome<readonly QuoteLine[]> {
  const off: QuoteLine[] = []
  const problems: Problem[] = []
  for (const [at, discount] of discounts.entries()) {
    const sections = sectionsOf[discount.of ?? 'all']
    const bases = basesOf(
      lines.filter((line) => sections.includes(line.section) && isInRoom(line, discount.roomId, swaps)),
    )
    const base = sumOf(bases)
    const pence = discount.kind === 'amount' ? discount.pence : sharePence(base, discount.basisPoints)
    if (discount.roomId !== undefined && base === 0) problems.push(nothingThere(discount, at))
    else if (pence > base) problems.push(tooMuch(discount, at, { base, pence }))
    else if (pence > 0) off.push(...lineOf(discount, at, { bases, pence }))
  }
  const over = basesOf([...lines, ...off]).some(({ netPence }) => netPence < 0)
  if (problems.length === 0 && over) problems.push(together)
  return problems.length === 0 ? accept(off) : { ok: false, problems }
}

/** Every line where no room is named; else one that stands for swaps of that room and no other. */
function isInRoom(
  { swapIds }: Pick<QuoteLine, 'swapIds'>,
  roomId: string | undefined,
  swaps: readonly Pick<Swap, 'swapId' | 'roomId'>[],
): boolean {
  if (roomId === undefined) return true
  const roomOf = (swapId: string) => swaps.find((swap) => swap.swapId === swapId)?.roomId
  return swapIds.length > 0 && swapIds.every((swapId) => roomOf(swapId) === roomId)
}

function basesOf(lines: readonly QuoteLine[]): readonly Base[] {
  return taxCategory.options
    .map((rateKey) => ({ rateKey, netPence: sumOf(lines.filter((line) => line.rateKey === rateKey)) }))
    .filter(({ netPence }) => netPence !== 0)
}

function sumOf(things: readonly { readonly netPence: number }[]): number {
  return things.reduce((sum, { netPence }) => sum + netPence, 0)
}

/** One line, or one for each category of tax that it is taken from. */
function lineOf(
  discount: Discount,
  at: number,
  { bases, pence }: { readonly bases: readonly Base[]; readonly pence: number },
): readonly QuoteLine[] {
  const shares = allocate(
    pence,
    bases.map((base) => base.netPence),
  )
  return bases.flatMap(({ rateKey, netPence: base }, index) => {
    const share = shares[index] ?? 0
    if (share === 0) return []
    const from = [
      given('The lines that it is taken from, before any discount', base, 'pence'),
      discount.kind === 'percent'
        ? given('The share taken off', discount.basisPoints, 'BasisPoints', 'priced by hand')
        : given('The sum taken off, over all rates of tax', discount.pence, 'pence', 'priced by hand'),
    ]
    return [
      {
        lineId: `discount-${at + 1}-${rateKey}`,
        section: 'other' as const,
        name: nameOf(discount),
        quantity: 1,
        unit: 'sum' as const,
        netPence: -share,
        rateKey,
        shared: true,
        swapIds: [],
        generic: false,
        why: because('Discount, as a line of its own.', -share, { unit: 'pence', from }),
      },
    ]
  })
}

function nameOf(discount: Discount): string {
  const of = { all: '', parts: ' of radiators and materials', labour: ' of labour' }[discount.of ?? 'all']
  const share = discount.kind === 'percent' ? ` (${discount.basisPoints / 100}%${of})` : ''
  const room = 200 - 'Discount: '.length - share.length
  return `Discount: ${discount.name.slice(0, room).trim()}${share}`
}

function nothingThere({ name, roomId }: Discount, at: number): Problem {
  const message = `The discount ${name} is of room ${roomId}, which has no priced line of its own; name a room that has a swap.`
  return { code: 'invalid', message, path: `job.pricing.discounts[${at}].roomId` }
}

function tooMuch(
  { name }: Discount,
  at: number,
  { base, pence }: { readonly base: number; readonly pence: number },
): Problem {
  return {
    code: 'invalid',
    message: `The discount ${name} takes off ${pence} pence where there are only ${base}; take off no more than that.`,
    path: `job.pricing.discounts[${at}]`,
  }
}

const together: Problem = {
  code: 'invalid',
  message: 'The discounts together take off more than what they are taken from; make them smaller.',
  path: 'job.pricing.discounts',
}
