/**
 * What happens to the part of a penny that is left. Every rule is the same for a charge and for its refund: `up` is
 * away from nothing, `down` is towards nothing, and the half rules send an exact half away from nothing, towards
 * nothing, or to the even penny.
 */
export type RoundingRule = 'half-up' | 'half-down' | 'half-even' | 'up' | 'down'

/**
 * A whole number times a fraction, rounded once by a stated rule: a n / d, worked exactly.
 * Throws when a figure is not a safe whole number, when d is 0, or when the answer is too large to be held exactly.
 *
 * @param a whole number, any sign (pence)
 * @param n whole number, any sign
 * @param d whole number, any sign, not 0
 * @param rule what to do with the remainder
 * @source arithmetic; the rules as tabled for java.math.RoundingMode (UP, DOWN, HALF_UP, HALF_DOWN, HALF_EVEN)
 * @example mulDiv(-25, 1, 10, 'half-up') // => -3
 */
export function mulDiv(a: number, n: number, d: number, rule: RoundingRule): number {
  const product = whole(a) * whole(n)
  const divisor = whole(d)
  if (divisor === 0n) throw new Error('mulDiv cannot divide by 0')
  const negative = product < 0n !== divisor < 0n
  const size = roundedDivision(magnitude(product), magnitude(divisor), rule)
  const answer = Number(negative ? -size : size)
  if (!Number.isSafeInteger(answer)) throw new Error(`${a} × ${n} / ${d} is too large to be held exactly`)
  return answer
}

function roundedDivision(top: bigint, bottom: bigint, rule: RoundingRule): bigint {
  const floor = top / bottom
  const rest = top % bottom
  return rest > 0n && goesUp(rule, { twice: 2n * rest, bottom, odd: floor % 2n === 1n }) ? floor + 1n : floor
}

type Remainder = { readonly twice: bigint; readonly bottom: bigint; readonly odd: boolean }

function goesUp(rule: RoundingRule, { twice, bottom, odd }: Remainder): boolean {
  if (rule === 'up') return true
  if (rule === 'down') return false
  if (twice !== bottom) return twice > bottom
  return rule === 'half-up' || (rule === 'half-even' && odd)
}

function magnitude(value: bigint): bigint {
  return value < 0n ? -value : value
}

function whole(value: number): bigint {
  if (!Number.isSafeInteger(value)) throw new Error(`${value} is not a whole number that can be held exactly`)
  return BigInt(value)
}
