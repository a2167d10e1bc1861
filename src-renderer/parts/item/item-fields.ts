import { z } from 'zod'
import { emitter, itemKind, specShapes } from '../../../src-main/domain/item.ts'
import type { Item } from '../../../src-main/domain/item.ts'
import { kindWords } from '../words.ts'
import { words } from './item.words.ts'

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
  return {
    path,
    label: words.labels[name] ?? name,
    options,
    counts: figures !== null,
    optional,
  }
}

/** The figures that may stand in a field that takes only some, such as the sizes that pipe comes in. */
function figuresAmong(schema: unknown): readonly string[] | null {
  if (!(schema instanceof z.ZodUnion)) return null
  const values = schema.options.map((one) => (one instanceof z.ZodLiteral ? one.value : null))
  return values.every((value) => typeof value === 'number') ? values.map(String) : null
}

/** A choice as a fitter reads it. */
export function optionInWords(option: string): string {
  return words.options[option] ?? option.charAt(0).toUpperCase() + option.slice(1)
}
