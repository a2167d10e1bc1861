import tables from '../../../resources/settings/u-values.json' with { type: 'json' }
import { heatTables as heatTablesShape } from '../../contract/house.ts'
import { accept } from '../../domain/outcome.ts'
import { ageBandUValue } from '../../engine/heat/age-band-u-value.ts'
import type { UseCase } from '../desk.ts'

/** The tables as delivered, read once when they are first asked for. */
const delivered = heatTablesShape.parse(tables)

export const heatTables: UseCase<'heat.tables'> = () => accept(delivered)

export const uvalueAgeBand: UseCase<'uvalue.ageBand'> = (input) => ageBandUValue(input, delivered)
