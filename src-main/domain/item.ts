import { z } from 'zod'
import {
  count,
  distanceMm,
  key,
  line,
  list,
  massKg,
  optionalLine,
  placeMm,
  record,
  sizeMm,
} from './schema.ts'
import { exponent, rating, ratedW } from './room-heat.ts'
import { pipeMaterial, pipeSizeMm, wallBuild } from './wall.ts'

/** Threads of emitter tappings and of what goes into them (ISO 228, parallel). */
export const thread = z.enum(['G1/8', 'G1/4', 'G3/8', 'G1/2', 'G3/4'])
export type Thread = z.infer<typeof thread>

export const unit = z.enum(['each', 'm', 'm2', 'ml', 'L'])
export type Unit = z.infer<typeof unit>

export const itemKind = z.enum([
  'valve',
  'tail',
  'vent',
  'blank',
  'seal',
  'plug',
  'screw',
  'anchor',
  'board',
  'filler',
  'sealant',
  'paint',
  'pipe',
  'pipeFitting',
  'clip',
  'collar',
  'insulation',
  'inhibitor',
  'cleaner',
  'testKit',
  'element',
  'sundry',
])
export type ItemKind = z.infer<typeof itemKind>

const finish = z.enum(['chrome', 'white', 'black', 'brass'])
const allowedN = z.number().gt(0).lte(50_000)

/** What distinguishes items of each kind: the fields a need is matched by. */
export const specShapes = {
  valve: {
    role: z.enum(['thermostatic', 'lockshield', 'manual']),
    body: z.enum(['straight', 'angled', 'corner']),
    pipeMm: pipeSizeMm,
    thread,
    finish,
    kvM3PerH: z.number().gt(0).lte(20).optional(),
  },
  /** An extension between valve and tapping. */
  tail: { thread, lengthMm: sizeMm.lte(200) },
  vent: { thread, sealing: z.enum(['oRing', 'none']), finish },
  blank: { thread, sealing: z.enum(['oRing', 'none']), finish },
  seal: { form: z.enum(['tape', 'hemp', 'paste', 'anaerobic']) },
  plug: { bitMm: sizeMm.lte(30), lengthMm: sizeMm.lte(300), screwLeastMm: sizeMm, screwMostMm: sizeMm },
  screw: { diameterMm: sizeMm.lte(20), lengthMm: sizeMm.lte(300) },
  anchor: {
    bitMm: sizeMm.lte(50),
    boardLeastMm: distanceMm,
    boardMostMm: distanceMm,
    allowedShearN: allowedN,
    allowedPullN: allowedN,
  },
  /** A board screwed across studs to carry brackets. */
  board: { thicknessMm: sizeMm, heightMm: sizeMm },
  filler: { forWall: z.enum(['plaster', 'tile']) },
  sealant: { form: z.enum(['sanitarySilicone', 'acrylic']) },
  paint: { form: z.enum(['wallTouchUp']) },
  pipe: { material: pipeMaterial, outsideMm: pipeSizeMm },
  pipeFitting: {
    shape: z.enum(['elbow', 'coupler', 'reducer', 'tee', 'stopEnd', 'insert']),
    joint: z.enum(['compression', 'endFeed', 'pushFit', 'none']),
    outsideMm: pipeSizeMm,
    toMm: pipeSizeMm.optional(),
    material: pipeMaterial.optional(),
  },
  clip: { outsideMm: pipeSizeMm },
  collar: { outsideMm: pipeSizeMm, finish },
  insulation: { outsideMm: pipeSizeMm, wallMm: sizeMm.lte(100) },
  inhibitor: { treatsLitresPerLitre: z.number().gt(0).lte(1000) },
  cleaner: { treatsLitresPerLitre: z.number().gt(0).lte(1000) },
  testKit: { tests: z.enum(['inhibitor']) },
  element: { watts: z.number().gt(0).lte(3000), thread },
  sundry: {
    what: z.enum([
      'dustSheet',
      'rubbleSack',
      'drainHoseJointing',
      'ventKey',
      'pipeFreezePack',
      'elementTee',
      'isolatingCap',
      'maskingTape',
      'wipes',
    ]),
    thread: thread.optional(),
  },
} as const satisfies Record<ItemKind, z.ZodRawShape>

/** Which unit each kind is counted in. */
export const unitOfKind: Readonly<Record<ItemKind, Unit>> = {
  valve: 'each',
  tail: 'each',
  vent: 'each',
  blank: 'each',
  seal: 'm',
  plug: 'each',
  screw: 'each',
  anchor: 'each',
  board: 'm',
  filler: 'ml',
  sealant: 'ml',
  paint: 'm2',
  pipe: 'm',
  pipeFitting: 'each',
  clip: 'each',
  collar: 'each',
  insulation: 'm',
  inhibitor: 'L',
  cleaner: 'L',
  testKit: 'each',
  element: 'each',
  sundry: 'each',
}

const everyItem = {
  itemId: key,
  name: line,
  /** True for a figure made up from generic rules rather than a maker's list. */
  generic: z.boolean(),
  /** Other words a fitter would type to find it. */
  alsoCalled: list(line, 20).optional(),
  retired: z.boolean().optional(),
  note: optionalLine.optional(),
}

const partOf = <K extends ItemKind>(kind: K) =>
  record({ ...everyItem, kind: z.literal(kind), spec: record<(typeof specShapes)[K]>(specShapes[kind]) })

/** A fitting, fixing or consumable. */
export const part = z.discriminatedUnion('kind', [
  partOf('valve'),
  partOf('tail'),
  partOf('vent'),
  partOf('blank'),
  partOf('seal'),
  partOf('plug'),
  partOf('screw'),
  partOf('anchor'),
  partOf('board'),
  partOf('filler'),
  partOf('sealant'),
  partOf('paint'),
  partOf('pipe'),
  partOf('pipeFitting'),
  partOf('clip'),
  partOf('collar'),
  partOf('insulation'),
  partOf('inhibitor'),
  partOf('cleaner'),
  partOf('testKit'),
  partOf('element'),
  partOf('sundry'),
])
export type Part = z.infer<typeof part>

/** A spec as a need asks for it: each value is equalled, or bounded. */
export const specValue = z.union([
  z.string(),
  z.number(),
  record({ atLeast: z.number() }),
  record({ atMost: z.number() }),
])
export const wantedSpec = z.record(z.string(), specValue)
export type WantedSpec = Readonly<Record<string, z.infer<typeof specValue>>>

/** Something packed with an emitter. `suits` names the walls for which it is meant; absent, all. */
export const boxed = record({
  kind: itemKind,
  spec: z.record(z.string(), z.union([z.string(), z.number()])),
  count: count.gte(1),
  suits: list(wallBuild, 5).optional(),
})
export type Boxed = z.infer<typeof boxed>

/** A hole a bracket needs: across from the emitter's centre line and up from its bottom edge, in mm. */
export const bracketHole = record({ acrossMm: placeMm, upMm: placeMm })

/** A bracket: where it sits and the holes it takes. `upper` brackets carry the pull. */
export const bracket = record({ name: line, upper: z.boolean(), holes: list(bracketHole, 12) })
export type Bracket = z.infer<typeof bracket>

export const tapping = record({
  at: z.enum(['bottomLeft', 'bottomRight', 'topLeft', 'topRight', 'bottomMiddle']),
  thread,
  holds: z.enum(['valve', 'vent', 'blank']),
  /** True when the maker has fitted it: then it is no joint of ours. */
  factoryFitted: z.boolean().optional(),
})
export type Tapping = z.infer<typeof tapping>

export const panelForm = z.enum([
  'single',
  'singleFinned',
  'double',
  'doubleFinned',
  'doubleTwoFins',
  'tripleThreeFins',
])

const emitterFields = {
  widthMm: sizeMm,
  heightMm: sizeMm,
  /** Front to back of the emitter itself. */
  depthMm: sizeMm,
  /** From the finished wall to the emitter's back, on its brackets. */
  wallGapMm: distanceMm,
  /** From the finished wall to the middle of the emitter's pipe connections. */
  connectionOffWallMm: distanceMm,
  pipeCentresMm: sizeMm,
  ratedW,
  rating: rating.optional(),
  exponent,
  waterLitres: z.number().gte(0).lte(500),
  dryKg: massKg.gt(0),
  brackets: list(bracket, 12),
  tappings: list(tapping, 8),
  box: list(boxed, 30),
}

/** What the wall and the heat need to know of an emitter, whichever catalogue it came from. */
export const emitterShape = record(emitterFields)
export type EmitterShape = z.infer<typeof emitterShape>

/** An emitter of the catalogue. */
export const emitter = record({
  ...everyItem,
  kind: z.literal('emitter'),
  form: z.discriminatedUnion('kind', [
    record({ kind: z.literal('panel'), panel: panelForm }),
    record({ kind: z.literal('column'), columns: count.gte(1).lte(8), sections: count.gte(1).lte(80) }),
    record({
      kind: z.literal('towelRail'),
      curve: z.enum(['straight', 'curved']),
      rungs: count.gte(1).lte(80),
    }),
  ]),
  finish: z.enum(['white', 'chrome', 'black', 'grey']),
  ...emitterFields,
})
export type Emitter = z.infer<typeof emitter>

export const item = z.union([emitter, part])
export type Item = z.infer<typeof item>
