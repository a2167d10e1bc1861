import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { AnswerOf, InputOf } from '../../../../src-main/contract/requests.ts'
import type { Picking, PickingLine } from '../../../../src-main/domain/follow-up/van.ts'
import { call } from '../../../bridge/call.ts'
import { askKey, useAsk } from '../../../bridge/use-ask.ts'

export type Tick = Omit<InputOf<'picking.tick'>, 'pickingNo'>

/** One pick list, and the ticks on it. A tick shows at once; it is taken back when it could not be kept. */
export function usePick(pickingNo: number) {
  const queries = useQueryClient()
  const read = useAsk('picking.read', { pickingNo })
  const key = askKey('picking.read', { pickingNo })
  const put = (line: PickingLine) =>
    queries.setQueryData<AnswerOf<'picking.read'>>(key, (now) =>
      now === undefined ? now : { picking: withLine(now.picking, line) },
    )
  const tick = useMutation({
    // One after the other, so that the last press on a line is the one that counts.
    scope: { id: `pick list ${pickingNo}` },
    mutationFn: (given: { readonly line: PickingLine; readonly tick: Tick }) =>
      call('picking.tick', { pickingNo, ...given.tick }),
    onMutate: async (given) => {
      await queries.cancelQueries({ queryKey: key })
      put(expected(given.line, given.tick))
    },
    onSuccess: ({ line }) => put(line),
    onError: () => queries.invalidateQueries({ queryKey: key }),
    onSettled: () => queries.invalidateQueries({ queryKey: ['picking.list'] }),
  })
  const close = useMutation({
    mutationFn: (input: { readonly onDay?: string }) => call('picking.close', { pickingNo, ...input }),
    onSuccess: () =>
      Promise.all(
        ['picking.read', 'picking.list', 'van.stock', 'van.moves'].map((name) =>
          queries.invalidateQueries({ queryKey: [name] }),
        ),
      ),
  })
  return { read, tick, close }
}

export type Pick = ReturnType<typeof usePick>

function withLine(picking: Picking, line: PickingLine): Picking {
  return { ...picking, lines: picking.lines.map((one) => (one.lineNo === line.lineNo ? line : one)) }
}

/** What a line will be like once its tick is kept; the desk has the last word. */
function expected(line: PickingLine, { picked = line.need, shortSays }: Tick): PickingLine {
  const { tickedAt: _ticked, shortSays: _short, insteadItemId: _id, insteadSays: _says, ...bare } = line
  const ticked = picked > 0 || shortSays !== undefined
  return {
    ...bare,
    picked,
    ...(ticked ? { tickedAt: new Date().toISOString() } : {}),
    ...(shortSays === undefined ? {} : { shortSays }),
  }
}
