import { readFileSync } from 'node:fs'
import { heatTables } from '../src-main/contract/heating/house.ts'

/** The heat tables as delivered, read from their file and checked against their shape. */
export const heatTablesOnDisk = heatTables.parse(
  JSON.parse(readFileSync(new URL('../resources/settings/u-values.json', import.meta.url), 'utf8')),
)
