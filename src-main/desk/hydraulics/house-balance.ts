import { balanceHouse } from '../../engine/water/balance-house.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

export const houseBalance: UseCase<'house.balance'> = async (input, desk) => {
  const figures = await figuresInForce(desk, desk.today)
  return figures.ok ? balanceHouse(input, figures.value) : figures
}
