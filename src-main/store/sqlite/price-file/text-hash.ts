/** Two 32-bit lanes of one hash, kept between calls so that no pair is made for each text. */
export type Lanes = { a: number; b: number }

const separator = 0x1f

export function startLanes(seed: number): Lanes {
  return { a: (0xdeadbeef ^ seed) | 0, b: (0x41c6ce57 ^ seed) | 0 }
}

/** Mixes a text into the lanes, and that it ends here. */
export function mixText(lanes: Lanes, text: string): void {
  let { a, b } = lanes
  for (let at = 0; at < text.length; at += 1) {
    const sign = text.charCodeAt(at)
    a = Math.imul(a ^ sign, 2654435761)
    b = Math.imul(b ^ sign, 1597334677)
  }
  lanes.a = Math.imul(a ^ separator, 2654435761)
  lanes.b = Math.imul(b ^ separator, 1597334677)
}

/** Stirs the lanes once more, so that texts that differ late differ everywhere. */
export function closeLanes(lanes: Lanes): void {
  const { a, b } = lanes
  lanes.a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909)
  lanes.b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(lanes.a ^ (lanes.a >>> 13), 3266489909)
}

/** 53 bits of the lanes: as many as a number holds exactly, here and in the data file. */
export function hashNumber({ a, b }: Lanes): number {
  return 4294967296 * (2097151 & b) + (a >>> 0)
}
