export type AgeBand = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H' | 'I' | 'J' | 'K' | 'L'
export type UkCountry = 'england' | 'wales' | 'scotland' | 'northernIreland'
export type UValueElement = 'wall' | 'roof' | 'floor' | 'window' | 'roofWindow' | 'door' | 'inside'

type Table = {
  readonly tableId: string
  readonly element: UValueElement
  readonly says: string
  readonly source: string
}
type Row<U> = {
  readonly construction: string
  readonly says: string
  readonly note?: string | undefined
  readonly uWPerM2K: U
}

/** A published table: one row a construction; its figures stand under the age bands or thicknesses, or there is one. */
export type UValueTable =
  | (Table & {
      readonly by: 'ageBand'
      readonly countries: readonly UkCountry[]
      readonly ageBands: readonly AgeBand[]
      /** Null where the table prints nothing. */
      readonly rows: readonly Row<readonly (number | null)[]>[]
    })
  | (Table & {
      readonly by: 'insulationMm'
      readonly insulationMm: readonly number[]
      readonly rows: readonly Row<readonly number[]>[]
    })
  | (Table & { readonly by: 'construction'; readonly rows: readonly Row<number>[] })

/** The years of each age band; null where a band has no end on that side. */
export type AgeBandYears = {
  readonly countries: readonly UkCountry[]
  readonly source: string
  readonly bands: readonly {
    readonly ageBand: AgeBand
    readonly fromYear: number | null
    readonly toYear: number | null
  }[]
}

export type UValueTables = {
  readonly uValues: readonly UValueTable[]
  readonly ageBands: readonly AgeBandYears[]
}
