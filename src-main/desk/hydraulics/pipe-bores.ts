import bores from '../../../resources/settings/pipe-bores.json' with { type: 'json' }
import { pipeBores as shape } from '../../contract/heating/hydraulics.ts'

/** The bores of pipe sizes as delivered, read once when they are first asked for. */
export const deliveredBores = shape.parse(bores)
