/** What is said while a swap is put into the job, and while an emitter is chosen. */
export const words = {
  noRoom: {
    title: 'A swap wants a room',
    says: 'Add the room first: its size tells how much heat it needs.',
    add: 'Add a room',
  },
  where: { title: 'Add a swap: where', room: 'Room', wall: 'Wall' },
  old: {
    title: 'What hangs there now',
    comesOff: 'An old emitter comes off',
    what: 'What it is',
    usual: 'Old radiator',
    width: 'Width of the old one (mm)',
    height: 'Height of the old one (mm)',
  },
  pipes: {
    title: 'The pipes',
    says: 'Measured from the wall’s left end to the middle of each pipe.',
    left: 'Left pipe, from the left (mm)',
    right: 'Right pipe, from the left (mm)',
    size: 'Size of the pipes',
    from: 'They come out of',
  },
  emitter: {
    title: 'The new emitter',
    says: 'Choose one and the swap is in the job; everything can still be changed.',
  },
  wrong: {
    size: (what: string) => `${what} must be a number of millimetres, more than 0 and at most 20000.`,
    noName: 'Say what hangs there now.',
    width: 'Its width',
    height: 'Its height',
    leftPipe: 'The place of the left pipe',
    rightPipe: 'The place of the right pipe',
  },
  inWay: {
    title: 'In the way on this wall',
    says: 'Windows, sills, sockets, doors: Enter puts each on the wall, and with nothing typed goes on to the emitters.',
    list: 'In the way on this wall',
    fields: {
      xMm: 'It begins, from the left (mm)',
      yMm: 'Its underside above the floor (mm)',
      widthMm: 'Its width (mm)',
      heightMm: 'Its height (mm)',
    },
    takeOffNamed: (name: string) => `Take it off: ${name}`,
    takeOff: 'Take it off',
    thing: ({ name, xMm, yMm, widthMm, heightMm }: Thing) =>
      `${name}: ${xMm} mm from the left, ${yMm} mm above the floor, ${widthMm} by ${heightMm} mm`,
    what: 'What is in the way',
    wrong: 'Give millimetres, up to 20000.',
    put: 'Put it on the wall',
  },
  picker: {
    find: 'Find an emitter',
    findSays: 'By size and kind: double 600 1000, or chrome rail. Enter goes to the first that is found.',
    cannotRank: "The emitters can't be ranked",
    looking: 'Looking in the catalogue',
    list: 'Emitters found',
    more: 'Show more emitters',
    suit: suitInWords,
    needs: ({ need, rough, others, flowC, returnC }: Needs) =>
      `The room needs ${need}${rough ? ', by a rough guess' : ''}${others === null ? '' : `; the others in it give ${others}`}; what each gives is at ${flowC}/${returnC} °C.`,
  },
  row: {
    fitted: 'fitted, before VAT',
    whyFitted: (name: string) => `what ${name} costs fitted`,
    givesToSpare: (heat: string, spare: string) => `gives ${heat}, ${spare} to spare`,
    gives: (heat: string) => `gives ${heat}`,
    notPriced: (gap: string) => `not in the price: ${gap}`,
    size: (heightMm: number, widthMm: number) => `${heightMm} high x ${widthMm} wide`,
    inMm: (size: string) => `${size} (mm)`,
    choose: 'Choose',
    chosen: 'Chosen',
    named: (what: string, name: string) => `${what}: ${name}`,
  },
} as const

type Thing = {
  readonly name: string
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

type Needs = {
  readonly need: string
  readonly rough: boolean
  /** What the room's other emitters give; null where there are none. */
  readonly others: string | null
  readonly flowC: number
  readonly returnC: number
}

function suitInWords(looked: number, suit: number, refused: number): string {
  const suits = `Of ${looked} ${looked === 1 ? 'emitter' : 'emitters'}, ${suit} ${suit === 1 ? 'suits' : 'suit'}`
  const top = suit > 1 ? `${suits}, the cheapest fitted on top.` : `${suits}.`
  if (refused === 0) return top
  return `${top} ${suit === 0 ? 'Those' : 'Below, those'} that do not, the nearest first.`
}
