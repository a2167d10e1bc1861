/**
 * A sum of money shared out by weights, to the penny and without losing one: share = total weight / sum of weights,
 * rounded towards nothing; the pennies that are left go one each to the largest remainders, the earlier of equals first.
 * All weights 0 shares equally. A negative total is shared as its positive would be.
 * Throws when a figure is not a safe whole number, a weight is negative, or there is nobody to share with.
 *
 * @param total whole pence, any sign
 * @param weights whole numbers, 0 or more
 * @source Hamilton's method of largest remainders
 * @example allocate(100, [1, 1, 1]) // => [34, 33, 33]
 */
export function allocate(total: number, weights: readonly number[]): readonly number[] {
  check(total, weights)
  if (weights.length === 0) return []
  const sum = weights.reduce((so, weight) => so + BigInt(weight), 0n)
  const shares = sum === 0n ? weights.map(() => 1n) : weights.map((weight) => BigInt(weight))
  const parts = sum === 0n ? BigInt(weights.length) : sum
  const size = BigInt(Math.abs(total))
  const floors = shares.map((share) => (size * share) / parts)
  const spare = Number(size - floors.reduce((so, floor) => so + floor, 0n))
  const lucky = new Set(byRemainder(shares.map((share) => (size * share) % parts)).slice(0, spare))
  const sign = total < 0 ? -1 : 1
  return floors.map((floor, index) => signed(Number(floor) + (lucky.has(index) ? 1 : 0), sign))
}

/** Places in the list, the largest remainder first, the earlier of equals first. */
function byRemainder(remainders: readonly bigint[]): readonly number[] {
  const remainderAt = (index: number) => remainders[index] ?? 0n
  return remainders
    .map((_, index) => index)
    .toSorted((a, b) =>
      remainderAt(a) === remainderAt(b) ? a - b : remainderAt(a) > remainderAt(b) ? -1 : 1,
    )
}

/** Without a minus before a nought. */
function signed(size: number, sign: number): number {
  return size === 0 ? 0 : size * sign
}

function check(total: number, weights: readonly number[]): void {
  if (!Number.isSafeInteger(total)) throw new Error(`${total} is not whole pence`)
  const wrong = weights.find((weight) => !Number.isSafeInteger(weight) || weight < 0)
  if (wrong !== undefined) throw new Error(`A weight must be a whole number, 0 or more, not ${wrong}`)
  if (weights.length === 0 && total !== 0) throw new Error(`There is nobody to share ${total} with`)
}
