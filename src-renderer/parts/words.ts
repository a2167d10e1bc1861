import type { TakeOffKind } from '../../src-main/domain/take-off.ts'

/** One of a few, as it is kept and as a person reads it. */
export type Choice = { readonly value: string | number; readonly label: string }

const choices = (words: Readonly<Record<string, string>>): readonly Choice[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }))

export const roomUses = choices({
  bedroom: 'Bedroom',
  bathroom: 'Bathroom',
  living: 'Living room',
  kitchen: 'Kitchen',
  dining: 'Dining room',
  hall: 'Hall or landing',
  study: 'Study',
  utility: 'Utility room',
  toilet: 'Toilet',
  other: 'Other',
})

export const floors = choices({
  carpet: 'Carpet',
  timber: 'Timber',
  tile: 'Tile',
  vinyl: 'Vinyl',
  bare: 'Bare',
})

export const systemKinds = choices({ sealed: 'Sealed', openVented: 'Open vented' })

export const drainWays = choices({
  wholeSystem: 'Drain the whole system',
  isolatedPart: 'Isolate and drain a part',
  freeze: 'Freeze the pipes',
})

export const boundaries = choices({
  outside: 'Outside air',
  room: 'A heated room',
  unheated: 'An unheated space',
  ground: 'The ground',
})

export const wallBuilds = choices({
  solidMasonry: 'Solid masonry',
  hollowBlock: 'Hollow block',
  aeratedBlock: 'Aerated block',
  boardOnStuds: 'Board on studs',
  boardOnDabs: 'Board on dabs',
})

export const wallFinishes = choices({ paint: 'Paint', paper: 'Paper', tile: 'Tile', bare: 'Bare' })

export const obstacleKinds = choices({
  window: 'Window',
  windowBoard: 'Window board',
  door: 'Door',
  doorSwing: 'Door swing',
  socket: 'Socket',
  switch: 'Switch',
  mirror: 'Mirror',
  basin: 'Basin',
  bath: 'Bath',
  shelf: 'Shelf',
  cable: 'Cable in the wall',
  pipeInWall: 'Pipe in the wall',
  other: 'Other',
})

export const sides = choices({ left: 'Left', right: 'Right' })
export const pipeMaterials = choices({ copper: 'Copper', plastic: 'Plastic', steel: 'Steel' })
export const pipeSizes: readonly Choice[] = [8, 10, 15, 22].map((mm) => ({ value: mm, label: `${mm} mm` }))
export const pipeOrigins = choices({ floor: 'The floor', wall: 'The wall' })
export const pipeCarries = choices({ unknown: 'Not known', flow: 'Flow', return: 'Return' })

export const valveKinds = choices({
  thermostaticAndLockshield: 'Thermostatic and lockshield',
  manualPair: 'Two manual valves',
  keep: 'Keep the old valves',
})
export const valveFinishes = choices({ white: 'White', chrome: 'Chrome', black: 'Black', brass: 'Brass' })

export const centreKinds: readonly Choice[] = [
  { value: 'betweenPipes', label: 'Between the two pipes' },
  { value: 'fromPipe:left', label: 'From the left pipe' },
  { value: 'fromPipe:right', label: 'From the right pipe' },
  { value: 'middleOfWall', label: 'In the middle of the wall' },
  { value: 'at', label: 'Where I say' },
]

/** What each kind of part is called, many of them, and all parts together that are no emitters. */
export const kindWords: Readonly<Record<TakeOffKind | 'parts', string>> = {
  emitter: 'Radiators and towel rails',
  parts: 'All other parts',
  valve: 'Valves',
  tail: 'Extension tails',
  vent: 'Air vents',
  blank: 'Blank plugs',
  seal: 'Thread seal',
  plug: 'Wall plugs',
  screw: 'Screws',
  anchor: 'Board anchors',
  board: 'Backing boards',
  filler: 'Filler',
  sealant: 'Sealant',
  paint: 'Paint',
  pipe: 'Pipe',
  pipeFitting: 'Pipe fittings',
  clip: 'Pipe clips',
  collar: 'Pipe collars',
  insulation: 'Pipe insulation',
  inhibitor: 'Inhibitor',
  cleaner: 'Cleaner',
  testKit: 'Test kits',
  element: 'Electric elements',
  sundry: 'Sundries',
}

/** Whether a room is warm, as it is said with BTU an hour. */
type Warmth = {
  readonly gives: string
  readonly needs: string
  readonly roomName: string
  readonly rough: boolean
}

/** What the shared parts themselves say. */
export const words = {
  where: (path: string) => `Where: ${path}`,
  generic: 'generic',
  keep: 'Keep it',
  notMade: 'Not made',
  noPrice: 'no price',
  fromPrice: (price: string) => `from ${price}`,
  why: {
    goNamed: (leaf: string) => `Go to the survey: ${leaf}`,
    go: 'Go to the survey',
    named: (of: string) => `Why: ${of}`,
    ask: 'Why',
  },
  wall: {
    waiting: 'Setting it out on the wall',
    failed: "It can't be set out yet",
    fits: 'It fits the wall',
    fitsNot: 'It does not fit',
  },
  surveyForm: {
    blank: 'Blank survey form (PDF)',
    ofJob: 'Survey form of this job (PDF)',
    save: 'Save the survey form',
    pages: (many: number) => `, ${many === 1 ? '1 page' : `${many} pages`}`,
  },
  find: {
    found: 'Parts found',
    takeNamed: (name: string) => `Take ${name}`,
    take: 'Take',
    none: 'No part of this kind has these words. Use fewer of them.',
    priced: (name: string, price: string) => `${name}, ${price}`,
  },
  file: {
    says: 'Prices are before tax.',
    what: 'What',
    as: 'As',
    xlsx: 'an Excel workbook',
    csv: 'a CSV file',
    make: 'Make the file',
    save: (name: string) => `Save ${name}`,
    size: (rows: string, kB: number) => `${rows}, ${kB} kB`,
    keptAt: (path: string) => `A copy is kept at ${path}`,
  },
  broken: {
    title: 'Something in this window went wrong',
    says: 'What was saved is safe. Open the page again; if it happens again, go back to the list of jobs.',
    again: 'Open the page again',
  },
  stages: {
    surveying: 'Surveying',
    quoted: 'Quoted',
    accepted: 'Accepted',
    done: 'Done',
    lost: 'Not going ahead',
  },
  heat: {
    w: (watts: string) => `${watts} W`,
    btuFirst: (btuPerHour: string, inWatts: string) => `${btuPerHour} BTU/h (${inWatts})`,
    need: ({ gives, needs, roomName, rough }: Warmth) =>
      `${gives} where the ${roomName} needs ${needs}${rough ? ', by a rough estimate' : ''}.`,
    enough: (need: string) => `Gives ${need}`,
    short: (by: string, need: string) => `${by} short: gives ${need}`,
  },
  figures: {
    anHour: (price: string) => `${price} an hour`,
    aKm: (price: string) => `${price} a km`,
    percent: (share: string) => `${share} %`,
    min: (minutes: number) => `${minutes} min`,
    hours: (hours: number) => `${hours} h`,
    hoursAndMin: (hours: number, minutes: number) => `${hours} h ${minutes} min`,
    m2: 'm²',
    litres: 'litres',
    units: {
      Mm: 'mm',
      M: 'm',
      M2: 'm²',
      m2: 'm²',
      M3: 'm³',
      C: '°C',
      degC: '°C',
      Kg: 'kg',
      WPerM2K: 'W/m²K',
      WPerM3: 'W/m³',
      LPerMin: 'l/min',
      L: 'litres',
      Min: 'minutes',
      min: 'minutes',
      Hours: 'hours',
      each: '',
      Count: '',
      Ratio: '',
      '1': '',
      sum: '',
    },
  },
} as const
