import type { WrittenNumber } from './written-number.ts'

export type PriceFor = {
  readonly amount: WrittenNumber
  /** The amount is for this many units; null when it is for the pack. */
  readonly per: number | null
  readonly holds: WrittenNumber
}

/**
 * A pack's price in whole pence: amount x 100 x holds / per, rounded once, half up, in whole numbers throughout.
 * Amount and holds are as written and positive or nought; `per` is a whole number above nought.
 */
export function packPence({ amount, per, holds }: PriceFor): number {
  if (per === null) return halfUp(amount.digits * 100, 10 ** amount.decimals, amount.digits)
  const over = 10 ** (amount.decimals + holds.decimals) * per
  const top = amount.digits * holds.digits * 100
  if (top <= Number.MAX_SAFE_INTEGER && over <= Number.MAX_SAFE_INTEGER) return halfUp(top, over, 0)
  return exactly(BigInt(amount.digits) * BigInt(holds.digits) * 100n, power(amount, holds) * BigInt(per))
}

/** True when the pack's price came out in pence without rounding. */
export function isExact({ amount, per, holds }: PriceFor): boolean {
  if (per === null)
    return amount.decimals <= 2 || (BigInt(amount.digits) * 100n) % tenTo(amount.decimals) === 0n
  const top = BigInt(amount.digits) * BigInt(holds.digits) * 100n
  return top % (power(amount, holds) * BigInt(per)) === 0n
}

function halfUp(top: number, over: number, digits: number): number {
  if (top > Number.MAX_SAFE_INTEGER || over > Number.MAX_SAFE_INTEGER)
    return exactly(BigInt(digits) * 100n, BigInt(over))
  const rest = top % over
  // `rest >= over - rest` is `2 x rest >= over` without the doubling.
  return (top - rest) / over + (rest >= over - rest ? 1 : 0)
}

/** Sums past all sense come out as one that no price may be, rather than as a figure that is not exact. */
function exactly(top: bigint, over: bigint): number {
  const rounded = (top * 2n + over) / (over * 2n)
  return rounded > BigInt(Number.MAX_SAFE_INTEGER) ? Number.MAX_SAFE_INTEGER : Number(rounded)
}

const tenTo = (decimals: number) => 10n ** BigInt(decimals)
const power = (amount: WrittenNumber, holds: WrittenNumber) => tenTo(amount.decimals + holds.decimals)
