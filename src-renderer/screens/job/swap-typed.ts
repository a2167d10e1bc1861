import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Pipe, PipeSizeMm } from '../../../src-main/domain/wall.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import type { NewPlace } from './add-swap/choice-input.ts'
import { newPipe } from './new-things.ts'
import type { SwapAsked } from './new-things.ts'
import { words } from './add-swap/add-swap.words.ts'

/** What a person has typed of a swap that is not in the job yet. */
export type SwapTyped = {
  readonly roomId: string
  readonly wallId: string
  readonly hasOld: boolean
  readonly oldName: string
  readonly oldWidth: string
  readonly oldHeight: string
  readonly leftX: string
  readonly rightX: string
  readonly size: string
  readonly from: 'floor' | 'wall'
}

export type TextField = 'oldName' | 'oldWidth' | 'oldHeight' | 'leftX' | 'rightX'

/** Starts in the first room that has no swap yet. */
export function startTyped(job: Job): SwapTyped {
  const room =
    job.rooms.find(({ roomId }) => !job.swaps.some((swap) => swap.roomId === roomId)) ?? job.rooms[0]
  return {
    roomId: room?.roomId ?? '',
    wallId: room?.walls[0]?.wallId ?? '',
    hasOld: true,
    oldName: words.old.usual,
    oldWidth: '',
    oldHeight: '',
    leftX: '',
    rightX: '',
    size: '15',
    from: 'floor',
  }
}

/** What must be put right before the swap can go into the job, field by field. */
export function wrongIn(typed: SwapTyped): Partial<Record<TextField, string>> {
  const size = (text: string, what: string) => {
    const value = typedNumber(text)
    const right = typeof value === 'number' && value > 0 && value <= 20_000
    return right ? undefined : words.wrong.size(what)
  }
  const named = typed.oldName.trim() === '' ? words.wrong.noName : undefined
  const all = {
    ...(typed.hasOld
      ? {
          oldName: named,
          oldWidth: size(typed.oldWidth, words.wrong.width),
          oldHeight: size(typed.oldHeight, words.wrong.height),
        }
      : {}),
    leftX: size(typed.leftX, words.wrong.leftPipe),
    rightX: size(typed.rightX, words.wrong.rightPipe),
  }
  return Object.fromEntries(Object.entries(all).filter(([, says]) => says !== undefined))
}

/** Where the emitter is to hang, as far as it is known: an old one whose sizes are not typed yet is left out. */
export function placeOf(typed: SwapTyped): NewPlace {
  const { roomId, wallId } = typed
  const { oldName, oldWidth, oldHeight } = wrongIn(typed)
  const isWrong = [oldName, oldWidth, oldHeight].some((wrong) => wrong !== undefined)
  return { roomId, wallId, pipes: pipesOf(typed), existing: isWrong ? null : existingOf(typed) }
}

export function swapAskedOf(typed: SwapTyped, emitter: Pick<Emitter, 'itemId'>): SwapAsked {
  const { roomId, wallId } = typed
  return { roomId, wallId, emitterId: emitter.itemId, pipes: pipesOf(typed), existing: existingOf(typed) }
}

function existingOf({ hasOld, oldName, oldWidth, oldHeight }: SwapTyped): SwapAsked['existing'] {
  return hasOld ? { name: oldName, widthMm: Number(oldWidth), heightMm: Number(oldHeight) } : null
}

const sizes: Readonly<Record<string, PipeSizeMm>> = { '8': 8, '10': 10, '15': 15, '22': 22 }

function pipesOf({ leftX, rightX, size, from }: SwapTyped): readonly Pipe[] {
  const rest = { from, outsideMm: sizes[size] ?? 15, material: 'copper' } as const
  return (
    [
      ['left', leftX],
      ['right', rightX],
    ] as const
  ).flatMap(([side, text]) => {
    const xMm = typedNumber(text)
    return typeof xMm === 'number' ? [newPipe(side, xMm, rest)] : []
  })
}
