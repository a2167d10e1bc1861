/** What the card about buying says: the split over the suppliers, each order, and the pipe to cut. */
export const words = {
  title: 'Buying',
  says: 'The cheapest split over your suppliers, with carriage, minimum orders, packs and pipe cuts in mind.',
  ask: 'Work out what to buy where',
  askAgain: 'Work it out again',
  trying: 'Trying ways to split the order …',
  cancel: 'Cancel',
  refused: "It can't be split",
  cancelled: 'Cancelled. Nothing was changed.',
  outdated: 'The job has changed since. Work it out again.',
  missing: 'Nobody sells these yet',
  split: {
    sums: (goods: string, carriage: string) => `before VAT: goods ${goods}, carriage ${carriage}.`,
    proved: 'Nothing is cheaper',
    best: 'The best that was found in time',
    why: 'what to buy where',
    oneSupplier: 'From one supplier alone',
    notKnown: 'not known',
    alone: (total: string, carriage: string, more: string) =>
      `${total}, of which carriage ${carriage}; ${more}`,
    same: 'the same',
    more: (sum: string) => `${sum} more`,
  },
  order: {
    named: (supplier: string) => `Order: ${supplier}`,
    sums: (goods: string, carriage: string) => `Goods ${goods}, carriage ${carriage}.`,
    toFree: (sum: string) => `${sum} more in goods would bring it free of carriage.`,
    table: (supplier: string) => `To buy: ${supplier}`,
    columns: { item: 'Item', code: 'Code', packs: 'Packs', leftOver: 'Left over' },
    packsOf: (packs: number, holds: string) => `${packs} x ${holds}`,
    none: 'none',
  },
  cuts: {
    title: 'Pipe to cut',
    cut: (mm: string) => `${mm} mm`,
    bar: (stock: string, cuts: string, leftOverMm: string) => `${stock}: ${cuts}; left over ${leftOverMm} mm`,
  },
} as const
