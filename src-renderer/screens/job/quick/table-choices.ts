import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import type { Choice } from '../../../parts/words.ts'
import { words } from './quick.words.ts'

type Tables = AnswerOf<'heat.tables'>
type Element = Tables['uValues'][number]['element']

/** The constructions that the tables have of an element, each once, by the names that they print. */
export function constructionChoices(tables: Tables, element: Element, country: unknown): readonly Choice[] {
  const ofCountry = tables.uValues.filter(
    (table) =>
      table.element === element &&
      (table.by !== 'ageBand' || table.countries.some((one) => one === (country ?? 'england'))),
  )
  const rows = ofCountry.flatMap((table) =>
    table.rows.map(({ construction, says }) => [construction, says] as const),
  )
  const first = new Map(rows.toReversed())
  return [...new Set(rows.map(([construction]) => construction))].map((value) => ({
    value,
    label: first.get(value) ?? value,
  }))
}

/** The age bands of a country by their years: "1930 to 1949". */
export function bandChoices(tables: Tables, country: unknown): readonly Choice[] {
  const years = tables.ageBands.find(({ countries }) =>
    countries.some((one) => one === (country ?? 'england')),
  )
  return (years?.bands ?? []).map(({ ageBand, fromYear, toYear }) => ({
    value: ageBand,
    label: spanInWords(fromYear, toYear),
  }))
}

function spanInWords(fromYear: number | null, toYear: number | null): string {
  if (fromYear === null) return words.years.before((toYear ?? 0) + 1)
  return toYear === null ? words.years.orLater(fromYear) : words.years.span(fromYear, toYear)
}

/** The age band that holds a year; none where the year is not known. */
export function bandOfYear(tables: Tables, country: unknown, year: number | undefined): string | undefined {
  if (year === undefined) return undefined
  const years = tables.ageBands.find(({ countries }) =>
    countries.some((one) => one === (country ?? 'england')),
  )
  return years?.bands.find(
    ({ fromYear, toYear }) => (fromYear ?? -Infinity) <= year && year <= (toYear ?? Infinity),
  )?.ageBand
}
