import { sharesOf } from './supplier-split-cost.ts'
import type { Assignment, SplitSum, WayCost } from './supplier-split-cost.ts'

/**
 * The split as a mixed-integer program in LP text, for a solver. x is 1 when line l is bought by way w (from one supplier, or
 * from two with a share c_lws each), y when supplier s gets an order, f when that order comes free of carriage:
 * minimise sum(c_lw x_lw) + sum(carriage_s (y_s - f_s)) with sum_w(x_lw) = 1, x_lw <= y_s for each s of w, f_s <= y_s,
 * sum_lw(c_lws x_lw) >= free_s f_s and >= minimum_s y_s.
 * Pence are whole, so a limit of half a penny less is the same limit, out of reach of rounding. Of equals the tiny second part
 * of the objective, under half a penny in all, takes the one with the fewest orders, then the earlier suppliers.
 *
 * @param sum what each line costs from each supplier, in whole pence, and the suppliers' terms
 * @source uncapacitated facility location with fixed charges (Balinski's formulation), with order minima, ours
 * @example splitModel({ lines: [{ lineId: 'a', from: [{ supplierId: 's', pence: 5 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }] }).split('\n')[0] // => "Minimize"
 */
export function splitModel(sum: SplitSum): string {
  const placeOf = new Map(sum.suppliers.map(({ supplierId }, place) => [supplierId, place]))
  const cells = sum.lines.map(({ from }, line) =>
    from.map((way) => ({
      name: nameOf(line, way, placeOf),
      pence: way.pence,
      shares: sharesOf(way).map(({ supplierId, pence }) => ({
        supplier: placeOf.get(supplierId) ?? -1,
        pence,
      })),
    })),
  )
  const all = cells.flat()
  const suppliers = sum.suppliers.length
  const perOrder = 0.2 / suppliers
  const perPlace = 0.2 / (suppliers * Math.max(1, sum.lines.length))
  const objective = [
    ...all.map(({ name, shares, pence }) => term(pence + perPlace * meanPlace(shares), name)),
    ...sum.suppliers.map(({ carriagePence }, place) => term(carriagePence + perOrder, `y${place}`)),
    ...sum.suppliers.map(({ carriagePence }, place) => term(-carriagePence, `f${place}`)),
  ]
  const rows = [
    ...cells.map((row) => `${row.map(({ name }) => term(1, name)).join('\n ')} = 1`),
    ...all.flatMap(({ name, shares }) => shares.map(({ supplier }) => `${name} - y${supplier} <= 0`)),
    ...sum.suppliers.flatMap(({ carriageFreeFromPence, minimumOrderPence }, place) => {
      const goods = all.flatMap(({ name, shares }) =>
        shares.filter(({ supplier }) => supplier === place).map(({ pence }) => term(pence, name)),
      )
      return [
        `f${place} - y${place} <= 0`,
        carriageFreeFromPence === undefined
          ? `f${place} <= 0`
          : atLeast(goods, carriageFreeFromPence, `f${place}`),
        ...(minimumOrderPence === undefined ? [] : [atLeast(goods, minimumOrderPence, `y${place}`)]),
      ]
    }),
  ]
  const names = [
    ...all.map(({ name }) => name),
    ...sum.suppliers.flatMap((_, place) => [`y${place}`, `f${place}`]),
  ]
  return [
    'Minimize',
    ` cost: ${objective.join('\n ')}`,
    'Subject To',
    ...rows.map((row, index) => ` r${index}: ${row}`),
    'Binaries',
    ...names.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n')
}

/** `x3_0` for line 3 from the first supplier, `x3_0_2` from the first and the third together. */
function nameOf(line: number, way: WayCost, placeOf: ReadonlyMap<string, number>): string {
  return `x${line}_${sharesOf(way)
    .map(({ supplierId }) => placeOf.get(supplierId) ?? -1)
    .join('_')}`
}

function meanPlace(shares: readonly { readonly supplier: number }[]): number {
  return shares.reduce((sum, { supplier }) => sum + supplier, 0) / shares.length
}

function atLeast(goods: readonly string[], pence: number, when: string): string {
  return `${[...goods, term(-Math.max(0, pence - 0.5), when)].join('\n ')} >= 0`
}

function term(factor: number, name: string): string {
  const size = Math.abs(factor)
  return `${factor < 0 ? '-' : '+'} ${size.toFixed(Number.isInteger(size) ? 0 : 9)} ${name}`
}

/**
 * The assignment that a solver's answer stands for: each line by the way whose x is nearest to 1.
 *
 * @param sum the same sum that the model was made from
 * @param valueOf the solver's value of a name in the model, 0 to 1
 * @source as splitModel
 * @example chosenIn({ lines: [{ lineId: 'a', from: [{ supplierId: 's', pence: 5 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }] }, () => 1).get('a') // => "s"
 */
export function chosenIn(sum: SplitSum, valueOf: (name: string) => number): Assignment {
  const placeOf = new Map(sum.suppliers.map(({ supplierId }, place) => [supplierId, place]))
  return new Map(
    sum.lines.flatMap(({ lineId, from }, line) => {
      const chosen = from.find((way) => valueOf(nameOf(line, way, placeOf)) > 0.5)
      return chosen === undefined ? [] : [[lineId, chosen.supplierId] as const]
    }),
  )
}
