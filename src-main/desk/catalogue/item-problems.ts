import { z } from 'zod'
import { problemsIn } from '../../contract/sentences.ts'
import { specShapes } from '../../domain/item.ts'
import type { Boxed, Emitter, Item, Part } from '../../domain/item.ts'
import type { Problem } from '../../domain/outcome.ts'

/** What is wrong with an item whose fields are each right by themselves; `path` is where the item stands in the input. */
export function itemProblems(item: Item, path = 'item'): readonly Problem[] {
  return item.kind === 'emitter' ? emitterProblems(item, path) : partProblems(item, path)
}

function partProblems(part: Part, path: string): readonly Problem[] {
  if (part.kind === 'plug') {
    const { screwLeastMm: least, screwMostMm: most } = part.spec
    return inOrder({ what: 'screw', least, most, path: `${path}.spec.screwMostMm` })
  }
  if (part.kind === 'anchor') {
    const { boardLeastMm: least, boardMostMm: most } = part.spec
    return inOrder({ what: 'board', least, most, path: `${path}.spec.boardMostMm` })
  }
  return part.kind === 'pipeFitting' ? fittingProblems(part, path) : []
}

function inOrder(range: {
  readonly what: string
  readonly least: number
  readonly most: number
  readonly path: string
}): readonly Problem[] {
  const { what, least, most, path } = range
  if (least <= most) return []
  const message = `The thickest ${what} that it takes (${most} mm) is thinner than the thinnest (${least} mm): give the larger of the two here.`
  return [{ code: 'invalid', message, path }]
}

function fittingProblems(part: Part & { readonly kind: 'pipeFitting' }, path: string): readonly Problem[] {
  const { shape, outsideMm, toMm } = part.spec
  if (shape !== 'reducer') return []
  if (toMm === undefined) {
    const message = 'A reducer goes from one pipe to another: give the other pipe’s size.'
    return [{ code: 'invalid', message, path: `${path}.spec.toMm` }]
  }
  if (toMm !== outsideMm) return []
  const message = `A reducer from ${outsideMm} mm to ${toMm} mm reduces nothing: give another size, or call it a coupler.`
  return [{ code: 'invalid', message, path: `${path}.spec.toMm` }]
}

/** What is in the box must be a thing of its kind, or no need would ever be met from it. */
function emitterProblems({ box }: Emitter, path: string): readonly Problem[] {
  return box.flatMap((boxed, at) => boxedProblems(boxed, `${path}.box[${at}].spec`))
}

function boxedProblems({ kind, spec }: Boxed, path: string): readonly Problem[] {
  const shape = z.strictObject(specShapes[kind] as z.ZodRawShape).partial()
  const parsed = shape.safeParse(spec)
  if (parsed.success) return []
  return problemsIn(parsed.error, spec).map((problem) => ({
    ...problem,
    path: problem.path === undefined ? path : `${path}.${problem.path}`,
  }))
}
