import { accept } from '../../domain/outcome.ts'
import { saveFirm } from '../../store/firm.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const firmSave: UseCase<'firm.save'> = async ({ firm }, desk) => {
  await writing(storeOf(desk), (tx) => saveFirm(tx, firm))
  return accept({ firm })
}
