import { accept } from '../../domain/outcome.ts'
import { readFirm } from '../../store/firm.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const firmRead: UseCase<'firm.read'> = async (_input, desk) =>
  accept({ firm: await reading(storeOf(desk), readFirm) })
