import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { AgeBand, AgeBandYears, UkCountry } from './age-band-tables.ts'

export type AgeBandInput = {
  readonly ageBand?: AgeBand | undefined
  readonly builtYear?: number | undefined
  readonly country: UkCountry
}
export type AgeBandAnswer = { readonly ageBand: AgeBand; readonly why: Derivation }

/**
 * The age band of a dwelling: the one that is given, or the one whose years hold the year it was built.
 * Refuses neither of them, a year and a band that do not agree, and a band that the country does not have.
 *
 * @param input an age band A to L, or the year it was built, 1000 to 2100, and the country
 * @param years the years of the bands, by country
 * @source RdSAP 2012 (version 9.94) table S1
 * @example ageBandOf({ builtYear: 1935, country: 'wales' }, [{ countries: ['wales'], source: 'S1', bands: [{ ageBand: 'C', fromYear: 1930, toYear: 1949 }] }]).value.ageBand // => 'C'
 */
export function ageBandOf(input: AgeBandInput, years: readonly AgeBandYears[]): Outcome<AgeBandAnswer> {
  const { ageBand, builtYear, country } = input
  const known = years.find(({ countries }) => countries.includes(country))
  if (known === undefined) return refuse('not-found', `There are no age bands for ${country}.`, 'country')
  if (builtYear === undefined) return bandGiven(ageBand, known)
  const built = known.bands.find(
    ({ fromYear, toYear }) => (fromYear ?? -Infinity) <= builtYear && builtYear <= (toYear ?? Infinity),
  )
  if (built === undefined) {
    return refuse('not-found', `No age band holds the year ${builtYear}; name the band.`, 'builtYear')
  }
  if (ageBand !== undefined && ageBand !== built.ageBand) {
    const message = `A dwelling of ${builtYear} is in age band ${built.ageBand}, not ${ageBand}; give one of the two.`
    return refuse('invalid', message, 'ageBand')
  }
  const why = because(`Age band: ${spanOf(built)}`, built.ageBand, {
    source: known.source,
    from: [given('Built', builtYear)],
  })
  return accept({ ageBand: built.ageBand, why })
}

function bandGiven(ageBand: AgeBand | undefined, known: AgeBandYears): Outcome<AgeBandAnswer> {
  if (ageBand === undefined) {
    return refuse(
      'invalid',
      'This table goes by age: give the age band or the year it was built.',
      'builtYear',
    )
  }
  const band = known.bands.find((one) => one.ageBand === ageBand)
  if (band !== undefined) return accept({ ageBand, why: given(`Age band: ${spanOf(band)}`, ageBand) })
  const bands = known.bands.map((one) => one.ageBand).join(', ')
  return refuse('not-found', `There is no age band ${ageBand} in this country; it has ${bands}.`, 'ageBand')
}

function spanOf({ fromYear, toYear }: AgeBandYears['bands'][number]): string {
  if (fromYear === null) return toYear === null ? 'any year' : `up to ${toYear}`
  return toYear === null ? `from ${fromYear}` : `${fromYear} to ${toYear}`
}
