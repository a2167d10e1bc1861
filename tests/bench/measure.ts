/** What one subject took, in milliseconds: the middle of its runs, the least and the most. */
export type Took = {
  readonly name: string
  readonly medianMs: number
  readonly leastMs: number
  readonly mostMs: number
}

/** Runs a subject a few times to warm up, then so many times by the clock. */
export async function took(
  name: string,
  work: () => unknown,
  { runs = 21, warmUps = 3 }: { readonly runs?: number; readonly warmUps?: number } = {},
): Promise<Took> {
  for (let run = 0; run < warmUps; run += 1) await work()
  const times: number[] = []
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  return spread(name, times)
}

/** The middle, the least and the most of some times. */
export function spread(name: string, times: readonly number[]): Took {
  const sorted = times.toSorted((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0
  return { name, medianMs: at(0.5), leastMs: at(0), mostMs: at(1) }
}

/** Prints subjects beside their peer, the first. */
export function printBeside(title: string, [peer, ...subjects]: readonly [Took, ...Took[]]): void {
  console.log(`\n${title}`)
  for (const one of [peer, ...subjects]) {
    const times = [one.medianMs, one.leastMs, one.mostMs].map((ms) => ms.toFixed(ms < 10 ? 2 : 0))
    const ratio = peer.medianMs === 0 ? '' : `${(one.medianMs / peer.medianMs).toFixed(2)}x`
    console.log(`  ${one.name.padEnd(58)} ${times[0]} ms (${times[1]} to ${times[2]})  ${ratio}`)
  }
}
