import type { Store } from '../store/store.ts'
import type { Desk } from './desk.ts'

/** The open data file. Requests that need one are refused before they come here, so none is our mistake. */
export function storeOf(desk: Desk): Store {
  if (desk.store === null) throw new Error('This request needs a data folder, and none is open')
  return desk.store
}
