/** A row of a valve's own table: how far it is open, in whatever unit its maker counts, and the Kv it then has. */
export type ValveRow = { readonly turns: number; readonly kvM3PerH: number }

/**
 * How far open a valve has a Kv, in its table's own unit: a straight line between the two rows about it. Null when the table
 * does not reach so low or so high, because nothing is known there.
 * Throws for a table that `tableFault` finds fault with.
 *
 * @param valve the Kv wanted, in m3/h, and the rows of the valve's table
 * @source practice, no published source: straight between neighbouring rows
 * @example valveOpening({ kvM3PerH: 0.15, table: [{ turns: 1, kvM3PerH: 0.1 }, { turns: 2, kvM3PerH: 0.2 }] }) // => 1.5
 */
export function valveOpening(valve: {
  readonly kvM3PerH: number
  readonly table: readonly ValveRow[]
}): number | null {
  const { kvM3PerH, table } = valve
  const fault = tableFault(table)
  if (fault !== null) throw new Error(fault.message)
  const upper = table.findIndex((row) => row.kvM3PerH >= kvM3PerH)
  const above = table[upper]
  if (above === undefined) return null
  if (above.kvM3PerH === kvM3PerH) return above.turns
  const below = table[upper - 1]
  if (below === undefined) return null
  const share = (kvM3PerH - below.kvM3PerH) / (above.kvM3PerH - below.kvM3PerH)
  return below.turns + share * (above.turns - below.turns)
}

/**
 * What is wrong with a valve's table: it must have a row, and both columns must rise from row to row. Null when it is sound.
 * @param table rows from the most closed to the widest open; turns and Kv 0 or more
 * @source practice, no published source
 * @example tableFault([{ turns: 1, kvM3PerH: 0.2 }, { turns: 2, kvM3PerH: 0.1 }]).row // => 1
 */
export function tableFault(
  table: readonly ValveRow[],
): { readonly row: number; readonly message: string } | null {
  if (table.length === 0) return { row: 0, message: "A valve's table must have at least one row." }
  for (const [row, { turns, kvM3PerH }] of table.entries()) {
    const last = table[row - 1]
    if (!(turns >= 0 && kvM3PerH >= 0 && (row < table.length - 1 || kvM3PerH >= 0.0001))) {
      return { row, message: 'Opening and Kv must be 0 or more, and the widest open at least 0.0001 m³/h.' }
    }
    if (last !== undefined && !(turns > last.turns && kvM3PerH > last.kvM3PerH)) {
      const message =
        'The rows must go from closed to open, opening and Kv both rising; ' +
        `after ${last.turns} with Kv ${last.kvM3PerH} came ${turns} with Kv ${kvM3PerH}.`
      return { row, message }
    }
  }
  return null
}
