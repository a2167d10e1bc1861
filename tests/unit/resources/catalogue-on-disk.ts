import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { fixing } from '../../../src-main/domain/figures.ts'
import { emitter, part } from '../../../src-main/domain/item.ts'
import type { Emitter, Part } from '../../../src-main/domain/item.ts'
import { supplier, supplierPrice } from '../../../src-main/domain/price.ts'

const folder = new URL('../../../resources/', import.meta.url)
export const onDisk = (name: string) => readFileSync(new URL(name, folder), 'utf8')
const fileOf = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject({ made: z.string().min(50), edition: z.string().regex(/^\d{4}-\d{2}$/), ...shape })
const read = <T extends z.ZodRawShape>(name: string, shape: T) =>
  fileOf(shape).parse(JSON.parse(onDisk(`catalogue/${name}`)))

export const emitters: readonly Emitter[] = read('emitters.json', { items: z.array(emitter) }).items
export const parts: readonly Part[] = read('parts.json', { items: z.array(part) }).items
export const suppliers = read('suppliers.json', { suppliers: z.array(supplier) }).suppliers
export const prices = read('prices.json', { prices: z.array(supplierPrice) }).prices
export const fixings = z.array(fixing).parse(JSON.parse(onDisk('settings/fixings.json')))
export const items = [...emitters, ...parts]

export const repeated = <T>(values: readonly T[]) =>
  values.filter((value, at) => values.indexOf(value) !== at)
export const ids = (some: readonly { readonly itemId: string }[]) => some.map(({ itemId }) => itemId)
export const partsOf = <K extends Part['kind']>(kind: K) =>
  parts.filter((one): one is Extract<Part, { kind: K }> => one.kind === kind)
export const emitterOf = (itemId: string) => {
  const found = emitters.find((one) => one.itemId === itemId)
  if (found === undefined) throw new Error(`No emitter ${itemId}`)
  return found
}
/** Emitters that differ in size alone. */
export const rangeOf = ({ form, finish }: Emitter) =>
  form.kind === 'panel'
    ? form.panel
    : form.kind === 'column'
      ? `${form.columns} columns`
      : `${form.curve} rail, ${finish}`
