import loadHighs from 'highs'
import { solvedFrom, solverSettings } from '../src-main/desk/buying/solver.ts'
import type { Solve } from '../src-main/engine/buying/split/supplier-split.ts'

/** The same solver with the same settings as the desk's, without a thread of its own: for many small models in a row. */
export async function solverInProcess(): Promise<Solve> {
  const solver = await loadHighs()
  return async (model) => {
    const found = solver.solve(model, solverSettings(10_000))
    const values = Object.values(found.Columns).map(
      (column) => [column.Name, 'Primal' in column ? column.Primal : undefined] as const,
    )
    return solvedFrom({ status: found.Status, values: Object.fromEntries(values) })
  }
}
