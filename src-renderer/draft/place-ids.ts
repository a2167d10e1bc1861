/** The button that fills a gap, and the one that makes a paper: places that the way through a job leads to. */
export const gapId = (gapKey: string) => `gap ${gapKey}`
export const makeId = (kind: string) => `make ${kind}`
