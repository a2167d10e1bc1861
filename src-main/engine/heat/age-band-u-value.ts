import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { refuseUnlessFinite } from '../units/finite.ts'
import { ageBandOf } from './age-band.ts'
import type { AgeBand, UkCountry, UValueElement, UValueTable, UValueTables } from './age-band-tables.ts'

export type AgeBandUValueInput = {
  readonly element: UValueElement
  readonly construction: string
  readonly ageBand?: AgeBand | undefined
  readonly builtYear?: number | undefined
  readonly insulationMm?: number | undefined
  readonly country?: UkCountry | undefined
}
export type AgeBandUValueAnswer = {
  readonly uWPerM2K: number
  readonly ageBand?: AgeBand
  readonly source: string
  readonly note?: string
  readonly why: Derivation
}

/**
 * A U-value as a published table prints it: walls by age and country, roofs by the insulation between the joists (by age where
 * nobody saw it), the rest by construction alone. A thickness between two columns takes the thinner one, as the table's own
 * reading does: the loss is then never too small. Nothing is interpolated.
 * Refuses a construction that no table has, an age that is missing or contradicts itself, a thickness where no table goes by
 * thickness, and a place where the table prints nothing.
 *
 * @param input the element, its construction, and what its table goes by; `country` is England when absent
 * @param tables the published tables; a firm may bring its own
 * @source RdSAP 2009 tables S6 to S9, RdSAP 2012 (version 9.94) tables S6 to S8 (band L), S10, S12, S14 and S15a; EN 12831-1:2017 table B.15 for doors
 * @example ageBandUValue({ element: 'window', construction: 'double' }, { ageBands: [], uValues: [{ tableId: 'w', element: 'window', by: 'construction', says: 'Windows', source: 'S14', rows: [{ construction: 'double', says: 'Double', uWPerM2K: 2 }] }] }).value.uWPerM2K // => 2.0
 */
export function ageBandUValue(input: AgeBandUValueInput, tables: UValueTables): Outcome<AgeBandUValueAnswer> {
  const wrong = refuseUnlessFinite(input)
  if (wrong !== null) return wrong
  const { element, construction, country = 'england', insulationMm } = input
  const ofElement = tables.uValues.filter((table) => table.element === element && isFor(table, country))
  const withRow = ofElement.filter((table) => table.rows.some((row) => row.construction === construction))
  if (withRow.length === 0) return unknown(input, ofElement)
  const byThickness = withRow.find((table) => table.by === 'insulationMm')
  if (insulationMm !== undefined) {
    if (byThickness !== undefined) return readThickness(byThickness, construction, insulationMm)
    const message = `No table of ${construction} goes by thickness; leave it out and name the insulated construction.`
    return refuse('invalid', message, 'insulationMm')
  }
  const byAge = withRow.filter((table) => table.by === 'ageBand')
  if (byAge.length > 0) return readAge(byAge, { ...input, country }, tables)
  const alone = withRow.find((table) => table.by === 'construction')
  if (alone !== undefined) return readAlone(alone, construction)
  const message = `The ${element} ${construction} goes by its insulation: give its thickness in mm.`
  return refuse('invalid', message, 'insulationMm')
}

function isFor(table: UValueTable, country: UkCountry): boolean {
  return table.by !== 'ageBand' || table.countries.includes(country)
}

function unknown(
  { element, construction }: AgeBandUValueInput,
  tables: readonly UValueTable[],
): Outcome<never> {
  const known = [...new Set(tables.flatMap((table) => table.rows.map((row) => row.construction)))]
  const there = known.length === 0 ? 'there is none here' : `it should be one of ${known.join(', ')}`
  const message = `There is no ${element} called ${construction} in the tables: ${there}.`
  return refuse('not-found', message, 'construction', 'heat.tables lists them all.')
}

type TableBy<B extends UValueTable['by']> = Extract<UValueTable, { readonly by: B }>

function rowOf<R extends { readonly construction: string }>(rows: readonly R[], construction: string): R {
  const row = rows.find((one) => one.construction === construction)
  if (row === undefined) throw new Error(`The table has no row ${construction}`)
  return row
}

function readThickness(
  table: TableBy<'insulationMm'>,
  construction: string,
  insulationMm: number,
): Outcome<AgeBandUValueAnswer> {
  const row = rowOf(table.rows, construction)
  const column = table.insulationMm.findLastIndex((thickness) => thickness <= insulationMm)
  const uWPerM2K = row.uWPerM2K[column]
  if (uWPerM2K === undefined) {
    const least = table.insulationMm[0] ?? 0
    return refuse('not-found', `The table begins at ${least} mm of insulation.`, 'insulationMm')
  }
  const used = because('Read at the printed thickness not above it', table.insulationMm[column] ?? 0, {
    unit: 'mm',
    from: [given('Insulation', insulationMm, 'mm')],
  })
  return answer(table, row, { uWPerM2K, from: [used] })
}

/** One table may print the bands that another leaves out. */
function readAge(
  ofConstruction: readonly TableBy<'ageBand'>[],
  input: AgeBandUValueInput & { readonly country: UkCountry },
  tables: UValueTables,
): Outcome<AgeBandUValueAnswer> {
  const band = ageBandOf(input, tables.ageBands)
  if (!band.ok) return band
  const { ageBand, why } = band.value
  const table = ofConstruction.find(({ ageBands }) => ageBands.includes(ageBand))
  if (table === undefined) return printsNothing(input.construction, ageBand)
  const row = rowOf(table.rows, input.construction)
  const uWPerM2K = row.uWPerM2K[table.ageBands.indexOf(ageBand)] ?? null
  if (uWPerM2K === null) return printsNothing(row.says, ageBand)
  const read = answer(table, row, { uWPerM2K, from: [given('Country', input.country), why] })
  return accept({ ...read.value, ageBand })
}

function printsNothing(construction: string, ageBand: AgeBand): Outcome<never> {
  return refuse(
    'not-found',
    `The table prints nothing for ${construction} in age band ${ageBand}.`,
    'ageBand',
  )
}

function readAlone(table: TableBy<'construction'>, construction: string): Outcome<AgeBandUValueAnswer> {
  const row = rowOf(table.rows, construction)
  return answer(table, row, { uWPerM2K: row.uWPerM2K, from: [] })
}

function answer(
  table: UValueTable,
  row: UValueTable['rows'][number],
  read: { readonly uWPerM2K: number; readonly from: readonly Derivation[] },
) {
  const { uWPerM2K, from } = read
  const { source } = table
  const why = because(`U-value as printed: ${table.says}`, uWPerM2K, {
    unit: 'W/m²K',
    source,
    from: [given('Construction', row.says), ...from],
  })
  const note = row.note === undefined ? {} : { note: row.note }
  return { ok: true as const, value: { uWPerM2K, source, ...note, why } }
}
