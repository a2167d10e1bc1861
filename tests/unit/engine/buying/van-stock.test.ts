import { expect, it } from 'vitest'
import { takeFromVan } from '../../../../src-main/engine/buying/van-stock.ts'

const line = (lineId: string, need: number) => ({ lineId, itemId: 'clip', need })

it('serves lines by their ids, whatever order they come in, and adds up stock given twice', () => {
  const stock = [
    { itemId: 'clip', quantity: 5 },
    { itemId: 'clip', quantity: 2 },
    { itemId: 'tape', quantity: 9 },
  ]
  expect(takeFromVan([line('b', 4), line('a', 6)], stock)).toEqual([
    { ...line('b', 4), fromVan: 1, toBuy: 3 },
    { ...line('a', 6), fromVan: 6, toBuy: 0 },
  ])
})

it('takes fractions without a crumb left: 0.3 m wanted, 0.1 + 0.2 m in the van', () => {
  const stock = [
    { itemId: 'clip', quantity: 0.1 },
    { itemId: 'clip', quantity: 0.2 },
  ]
  expect(takeFromVan([line('a', 0.3)], stock)).toEqual([{ ...line('a', 0.3), fromVan: 0.3, toBuy: 0 }])
})
