import { accept } from '../../domain/outcome.ts'
import { listChanges } from '../../store/price-list/changes.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { longWork } from '../running/long-work.ts'

const usualMost = 100

export const priceChanges: UseCase<'price.changes'> = async ({ most = usualMost }, desk) =>
  accept({ changes: await reading(storeOf(desk), (tx) => listChanges(tx, most)) })

/** A change may be a whole list, so it is undone on another thread. */
export const priceUndo: UseCase<'price.undo'> = ({ changeNo }, desk) =>
  longWork({ kind: 'undo', folder: storeOf(desk).folder, changeNo, at: desk.now() }, undefined)
