import { useQueries } from '@tanstack/react-query'
import { isEmitter } from '../../../src-main/domain/catalogue.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { call, problemsOf } from '../../bridge/call.ts'
import { askKey } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { roomHeatNow } from './room-output.ts'
import type { RoomHeatNow } from './room-output.ts'

type Found = {
  readonly room: RoomHeatNow | null
  readonly finding: boolean
  readonly problems: readonly Problem[]
}

/** A room with its emitters from the catalogue, as the job stands now. */
export function useRoomHeat(roomId: string): Found {
  const { job } = useOpenJob()
  const ids = [
    ...new Set(job.swaps.filter((swap) => swap.roomId === roomId).map(({ emitterId }) => emitterId)),
  ]
  const asked = useQueries({
    queries: ids.map((itemId) => ({
      queryKey: askKey('catalogue.item', { itemId }),
      queryFn: () => call('catalogue.item', { itemId }),
      staleTime: Infinity,
    })),
  })
  const items = new Map<string, Emitter>()
  for (const { data } of asked) {
    if (data !== undefined && isEmitter(data.item)) items.set(data.item.itemId, data.item)
  }
  return {
    room: roomHeatNow(job, roomId, items),
    finding: asked.some(({ isPending }) => isPending),
    problems: problemsOf(asked.find(({ error }) => error !== null)?.error),
  }
}
