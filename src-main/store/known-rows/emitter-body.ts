import type { z } from 'zod'
import { emitter, panelForm } from '../../domain/item.ts'
import type { Emitter } from '../../domain/item.ts'
import { fromJson } from '../read-row.ts'
import { fieldsFit, isFlag, isLike, isListOf, isOneOf, isText, isWhole, isWithin } from './fields-fit.ts'
import type { Fits } from './fields-fit.ts'

const tailSchema = emitter.unwrap().pick({
  brackets: true,
  tappings: true,
  box: true,
  rating: true,
  alsoCalled: true,
  retired: true,
  note: true,
})
type Tail = z.infer<typeof tailSchema>

/** No unescaped quote stands within a text of JSON, so this is a field's beginning wherever it is found. */
const tailBegins = ',"brackets":['

const isSize = isWithin({ above: 0, to: 20_000 })
const isDistance = isWithin({ from: 0, to: 20_000 })
const isTemperature = isWithin({ from: -60, to: 130 })
const isCount = isWhole(1, 80)

const formOf = (kind: Emitter['form']['kind'], rest: Readonly<Record<string, Fits>>) =>
  [kind as unknown, fieldsFit({ must: { kind: isOneOf([kind]), ...rest }, may: {} })] as const
const forms = new Map([
  formOf('panel', { panel: isOneOf(panelForm.options) }),
  formOf('column', { columns: isWhole(1, 8), sections: isCount }),
  formOf('towelRail', { curve: isOneOf(['straight', 'curved']), rungs: isCount }),
])
const isForm: Fits = (form) =>
  typeof form === 'object' && form !== null && 'kind' in form && forms.get(form.kind)?.(form) === true

/** All of an emitter but what lies in the box and is on the wall: as the schema has it, field by field. */
const headFits = fieldsFit({
  must: {
    itemId: isLike(/^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/),
    name: isText(1, 200),
    generic: isFlag,
    kind: isOneOf(['emitter']),
    form: isForm,
    finish: isOneOf(['white', 'chrome', 'black', 'grey']),
    widthMm: isSize,
    heightMm: isSize,
    depthMm: isSize,
    wallGapMm: isDistance,
    connectionOffWallMm: isDistance,
    pipeCentresMm: isSize,
    ratedW: isWithin({ above: 0, to: 1_000_000 }),
    exponent: isWithin({ from: 1, to: 2 }),
    waterLitres: isWithin({ from: 0, to: 500 }),
    dryKg: isWithin({ above: 0, to: 2000 }),
  },
  may: {
    alsoCalled: isListOf(isText(1, 200), 20),
    retired: isFlag,
    note: isText(0, 200),
    rating: fieldsFit({
      must: { flowC: isTemperature, returnC: isTemperature, roomC: isTemperature },
      may: {},
    }),
  },
})

/** Reads an emitter's row; null for what is no emitter as we write them: the schema reads that, and says what is wrong with it. */
export type ReadEmitter = (body: string, what: string) => Emitter | null

/**
 * Reads the bodies of one emitter after another sooner than the schema does. Many have the same brackets, tappings and box, word for
 * word: those are read by the schema once, and shared. What stands before them is parsed and checked for each.
 */
export function emitterReader(): ReadEmitter {
  const tails = new Map<string, Tail | null>()
  return (body, what) => {
    const at = body.indexOf(tailBegins)
    if (at === -1) return null
    const head = fromJson(`${body.slice(0, at)}}`, what)
    if (!headFits(head)) return null
    const text = body.slice(at + 1)
    const known = tails.get(text)
    const tail = known === undefined ? tailOf(fromJson(`{${text}`, what)) : known
    if (known === undefined) tails.set(text, tail)
    return tail === null ? null : { ...(head as Omit<Emitter, 'brackets' | 'tappings' | 'box'>), ...tail }
  }
}

function tailOf(value: unknown): Tail | null {
  const parsed = tailSchema.safeParse(value)
  return parsed.success ? parsed.data : null
}
