import { z } from 'zod'
import { emitter, itemKind, specShapes } from '../../../src-main/domain/item.ts'
import type { Item } from '../../../src-main/domain/item.ts'
import { kindWords } from '../words.ts'

export type Kind = Item['kind']

export const kindChoices: readonly { readonly value: Kind; readonly label: string }[] = [
  { value: 'emitter', label: kindWords.emitter },
  ...itemKind.options.map((kind) => ({ value: kind, label: kindWords[kind] })),
]

/** One figure of an item: where it lies, what it is called, and what may stand there. */
export type ItemField = {
  readonly path: readonly string[]
  readonly label: string
  readonly options: readonly string[] | null
  /** True when its options are figures. */
  readonly counts: boolean
  readonly optional: boolean
}

const labels: Readonly<Record<string, string>> = {
  role: 'Kind of valve',
  body: 'Body',
  pipeMm: 'Pipe (mm)',
  thread: 'Thread',
  finish: 'Finish',
  kvM3PerH: 'Kv, fully open (m³/h)',
  lengthMm: 'Length (mm)',
  sealing: 'Seal',
  form: 'Form',
  bitMm: 'Drill bit (mm)',
  screwLeastMm: 'Thinnest screw (mm)',
  screwMostMm: 'Thickest screw (mm)',
  diameterMm: 'Diameter (mm)',
  boardLeastMm: 'Thinnest board (mm)',
  boardMostMm: 'Thickest board (mm)',
  allowedShearN: 'Allowed load down the wall (N)',
  allowedPullN: 'Allowed load out of the wall (N)',
  thicknessMm: 'Thickness (mm)',
  heightMm: 'Height (mm)',
  forWall: 'For',
  material: 'Material',
  outsideMm: 'Pipe outside (mm)',
  shape: 'Shape',
  joint: 'Joint',
  toMm: 'To pipe (mm)',
  wallMm: 'Thickness (mm)',
  treatsLitresPerLitre: 'Litres of water treated by a litre',
  tests: 'Tests',
  watts: 'Heat (W)',
  what: 'What it is',
  widthMm: 'Width (mm)',
  depthMm: 'Depth (mm)',
  wallGapMm: 'Gap behind, on its brackets (mm)',
  connectionOffWallMm: 'Pipe centre off the wall (mm)',
  pipeCentresMm: 'Pipe centres (mm)',
  ratedW: 'Rated output at 75/65/20 (W)',
  exponent: 'Exponent n',
  waterLitres: 'Water (litres)',
  dryKg: 'Mass, empty (kg)',
}

const emitterFigures = [
  'widthMm',
  'heightMm',
  'depthMm',
  'wallGapMm',
  'connectionOffWallMm',
  'pipeCentresMm',
  'ratedW',
  'exponent',
  'waterLitres',
  'dryKg',
  'finish',
] as const

/** The figures of a kind, read off its schema, so that the form can ask for no other. */
export function fieldsOf(kind: Kind): readonly ItemField[] {
  if (kind === 'emitter') {
    const { shape } = emitter.unwrap()
    return emitterFigures.map((name) => fieldOf([name], shape[name]))
  }
  return Object.entries(specShapes[kind] as Readonly<Record<string, z.ZodType>>).map(([name, schema]) =>
    fieldOf(['spec', name], schema),
  )
}

function fieldOf(path: readonly string[], schema: z.ZodType): ItemField {
  const name = path.at(-1) ?? ''
  const optional = schema instanceof z.ZodOptional
  const inner = schema instanceof z.ZodOptional ? schema.unwrap() : schema
  const figures = figuresAmong(inner)
  const options = inner instanceof z.ZodEnum ? inner.options.map(String) : figures
  return { path, label: labels[name] ?? name, options, counts: figures !== null, optional }
}

/** The figures that may stand in a field that takes only some, such as the sizes that pipe comes in. */
function figuresAmong(schema: unknown): readonly string[] | null {
  if (!(schema instanceof z.ZodUnion)) return null
  const values = schema.options.map((one) => (one instanceof z.ZodLiteral ? one.value : null))
  return values.every((value) => typeof value === 'number') ? values.map(String) : null
}

const optionWords: Readonly<Record<string, string>> = {
  oRing: 'Captive O-ring',
  none: 'None',
  endFeed: 'End feed',
  pushFit: 'Push fit',
  stopEnd: 'Stop end',
  sanitarySilicone: 'Sanitary silicone',
  wallTouchUp: 'Wall touch-up',
  dustSheet: 'Dust sheet',
  rubbleSack: 'Rubble sack',
  drainHoseJointing: 'Drain hose jointing',
  ventKey: 'Vent key',
  pipeFreezePack: 'Pipe freezing pack',
  elementTee: 'Element T-piece',
  isolatingCap: 'Isolating cap',
  maskingTape: 'Masking tape',
}

/** A choice as a fitter reads it. */
export function optionInWords(option: string): string {
  return optionWords[option] ?? option.charAt(0).toUpperCase() + option.slice(1)
}
