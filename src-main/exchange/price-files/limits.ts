/**
 * What a price file may be at most. The figures are ours: wide enough for the longest list a supplier sends, small
 * enough that a broken or hostile file cannot fill the machine. (Practice, no published source.)
 */
export const priceFileLimits = {
  /** Bytes of a text or XML file. */
  textBytes: 512 * 1024 * 1024,
  /** Bytes of a workbook as it lies on the disk. */
  workbookBytes: 64 * 1024 * 1024,
  /** Bytes of a workbook's parts unpacked, all together. */
  unpackedBytes: 192 * 1024 * 1024,
  /** Parts that a workbook holds, read or not. */
  workbookParts: 2000,
  /** Sheets that are looked through for a list of prices. */
  sheetsTried: 20,
  /** Characters of one cell. */
  cellChars: 100_000,
  /** Characters in which no row comes to its end: a quotation mark was left open, or it is no table. */
  rowChars: 4_000_000,
  /** Cells of one row. */
  rowCells: 1000,
  /** Cells of one sheet, the empty ones between included. */
  sheetCells: 10_000_000,
  /** Cells that merged ones are spread to. */
  mergedCells: 1_000_000,
  /** Elements inside one another in an XML file. */
  xmlDepth: 60,
  /** Rows from the file's first on that are looked at to find headings and columns. */
  sampleRows: 300,
  /** Rows that are shown before anything is read in. */
  shownRows: 40,
} as const
