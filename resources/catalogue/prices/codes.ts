import type { SellerId } from '../sold.ts'

/** A whole number from a text, the same on every machine (FNV-1a, 32 bits). */
export function numberOf(text: string): number {
  let hash = 0x811c9dc5
  for (const letter of text) {
    hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193)
  }
  return hash >>> 0
}

const countOfCodes = 60_000

/**
 * Each seller's own code for a pack. The counter's are five figures and keep their leading zeros; the warehouse's spell the
 * item; the fixings house has letters and figures. A code comes from the pack, not its place in a list, so that it stays when
 * others are added.
 */
export function codeMaker(): (sellerId: SellerId, itemId: string, holds: number) => string {
  const taken = new Set<string>()
  return (sellerId, itemId, holds) => {
    const pack = `${itemId} ${holds}`
    if (sellerId === 'warehouse') return claimed(taken, spelt(itemId, holds))
    const start = numberOf(`${sellerId} ${pack}`) % countOfCodes
    for (let step = 0; step < countOfCodes; step += 1) {
      const figures = String((start + step) % countOfCodes).padStart(5, '0')
      const code = sellerId === 'counter' ? figures : `IF/${figures}`
      if (taken.has(code)) continue
      return claimed(taken, code)
    }
    throw new Error(`No code is left for ${pack}`)
  }
}

function claimed(taken: Set<string>, code: string): string {
  if (taken.has(code)) throw new Error(`Two packs have the code ${code}`)
  taken.add(code)
  return code
}

/** The first two letters of each word, figures whole: `panel-double-finned-600x1000` is `PA-DO-FI-600X1000`. */
function spelt(itemId: string, holds: number): string {
  const words = itemId.split('-').map((word) => (/^\d/.test(word) ? word : word.slice(0, 2)))
  const pack = holds === 1 ? '' : `/${holds}`
  return `${words.join('-').toUpperCase()}${pack}`
}
