import tables from '../../../resources/settings/u-values.json' with { type: 'json' }
import { heatTables as heatTablesShape } from '../../contract/heating/house.ts'
import { accept } from '../../domain/outcome.ts'
import { ageBandUValue } from '../../engine/heat/age-band-u-value.ts'
import { quickRoom } from '../../engine/heat/quick-room.ts'
import type { UseCase } from '../desk.ts'

/** The tables as delivered, read once when they are first asked for. */
const delivered = heatTablesShape.parse(tables)

export const heatTables: UseCase<'heat.tables'> = () => accept(delivered)

export const uvalueAgeBand: UseCase<'uvalue.ageBand'> = (input) => ageBandUValue(input, delivered)

export const roomQuick: UseCase<'room.quick'> = (input) => quickRoom(input, delivered)
