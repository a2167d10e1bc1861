import { accept, refuse } from '../../domain/outcome.ts'
import { saveSupplier } from '../../store/catalogue.ts'
import { readDiscountGroups, saveDiscountGroup } from '../../store/price-list/discounts.ts'
import { reading, writing } from '../../store/store.ts'
import { readSuppliers, suppliersInShort } from '../../store/suppliers.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const supplierList: UseCase<'supplier.list'> = (_, desk) =>
  reading(storeOf(desk), async (tx) => {
    const inShort = new Map((await suppliersInShort(tx)).map((one) => [one.supplierId, one]))
    const groups = Map.groupBy(await readDiscountGroups(tx), ({ supplierId }) => supplierId)
    const suppliers = (await readSuppliers(tx)).map((supplier) => {
      const { rows = 0, newest = null, own = false } = inShort.get(supplier.supplierId) ?? {}
      return { supplier, rows, newest, own, groups: groups.get(supplier.supplierId) ?? [] }
    })
    return accept({ suppliers })
  })

export const supplierSave: UseCase<'supplier.save'> = ({ supplier }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const called = supplier.name.toLowerCase()
    const other = (await readSuppliers(tx)).find(
      ({ supplierId, name }) => supplierId !== supplier.supplierId && name.toLowerCase() === called,
    )
    if (other !== undefined) {
      const message = `There is a supplier called ${other.name} already (${other.supplierId}): give this one another name, or change that one.`
      return refuse('conflict', message, 'supplier.name')
    }
    await saveSupplier(tx, supplier)
    return accept({ supplier })
  })

export const discountGroupSave: UseCase<'discountGroup.save'> = ({ group }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const { supplierId } = group
    const known = (await readSuppliers(tx)).some((supplier) => supplier.supplierId === supplierId)
    if (!known) {
      const message = `There is no supplier ${supplierId}: name one that supplier.list has.`
      return refuse('not-found', message, 'group.supplierId')
    }
    await saveDiscountGroup(tx, group)
    const groups = await readDiscountGroups(tx)
    return accept({ groups: groups.filter((one) => one.supplierId === supplierId) })
  })
