/** What hears a file's rows as they stand, one after another, and says each time whether to go on. */
export type RowsHearer = {
  /** `fault` says why the row cannot be read at all. */
  readonly row: (rowNo: number, cells: readonly string[], fault?: string) => boolean
  /** The share that is done; false stops. */
  readonly part: (doneRatio: number) => boolean
}

/** `rows` heard before the end or the stop; the hash is of the bytes read so far. */
export type RowsHeard = { readonly fileHash: string }
