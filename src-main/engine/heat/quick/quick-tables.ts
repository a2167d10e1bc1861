import type { AgeBand, UkCountry, UValueTables } from '../age-band-tables.ts'

/** The published tables from which a room that was entered quickly takes what nobody measured. */
export type QuickTables = UValueTables & {
  readonly airChanges: {
    readonly source: string
    readonly rows: readonly {
      readonly room: string
      readonly says: string
      readonly before2000PerHour: number
      readonly from2000PerHour: number
      readonly after2006PerHour: number
    }[]
  }
  readonly roomTemperatures: readonly {
    readonly room: string
    readonly says: string
    readonly roomC: number
    readonly source: string
  }[]
  readonly thermalBridges: {
    readonly source: string
    readonly rows: readonly {
      readonly building: string
      readonly says: string
      readonly thermalBridgeWPerM2K: number
    }[]
  }
  readonly temperatureFactors: {
    readonly source: string
    readonly rows: readonly { readonly space: string; readonly says: string; readonly factor: number }[]
  }
  readonly groundFloorInsulation: {
    readonly source: string
    readonly rows: readonly {
      readonly countries: readonly UkCountry[]
      readonly ageBands: readonly AgeBand[]
      readonly insulationMm: readonly (number | null)[]
    }[]
  }
}
