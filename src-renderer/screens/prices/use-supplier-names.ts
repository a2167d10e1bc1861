import { useAsk } from '../../bridge/use-ask.ts'

/** Every supplier, to choose from. */
export function useSupplierNames(): readonly { readonly value: string; readonly label: string }[] {
  const suppliers = useAsk('supplier.list', {})
  return (suppliers.data?.suppliers ?? []).map(({ supplier }) => ({
    value: supplier.supplierId,
    label: supplier.name,
  }))
}

/** The supplier of an id, by name. */
export function useSupplierNameById(): ReadonlyMap<string, string> {
  return new Map(useSupplierNames().map(({ value, label }) => [value, label]))
}
