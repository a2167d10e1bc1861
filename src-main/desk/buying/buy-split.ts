import { offeredLines } from '../../engine/buying/split/supplier-split-offers.ts'
import { splitCase, splitWith } from '../../engine/buying/split/supplier-split.ts'
import type { UseCase } from '../desk.ts'
import { solverWithin } from './solver.ts'

export const buySplit: UseCase<'buy.split'> = async (input) => {
  const lines = offeredLines(input)
  return lines.ok ? splitWith(splitCase(lines.value, input.suppliers), solverWithin()) : lines
}
