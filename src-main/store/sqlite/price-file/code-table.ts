import { closeLanes, mixText, startLanes } from './text-hash.ts'
import type { Lanes } from './text-hash.ts'

/**
 * A supplier's codes by their hash, in flat arrays, because a million strings in a map take more room than the whole import
 * may. The hash has 64 bits: of a million codes two meet once in some forty million files.
 */
export type CodeTable = {
  /** The place of a code; -1 when it is not there. */
  readonly find: (code: string) => number
  /** Puts a code in that is not there yet, and gives its place. */
  readonly add: (code: string, rowNo: number, rawHash: number) => number
  readonly rowNoAt: (place: number) => number
  /** 0 when it is not known. */
  readonly rawHashAt: (place: number) => number
  /** The row of the file that was taken for this code; 0 when none was yet. */
  readonly fileRowAt: (place: number) => number
  /** True when this hash is that of the row at a place, and no row of the file was taken for it yet. */
  readonly awaits: (place: number, rawHash: number) => boolean
  readonly takeAt: (place: number, fileRow: number) => void
  /** Says that the file has the code, whether or not its row can be taken. */
  readonly meetAt: (place: number) => void
  /** Rows of the list that the file has not. */
  readonly unmet: () => readonly number[]
}

/** What is known of so many codes, in the order in which they came. Blocks are added, never copied. */
const inBlock = 2 ** 15
const blockBits = 15
type Block = {
  readonly a: Int32Array
  readonly b: Int32Array
  readonly rowNo: Int32Array
  readonly fileRow: Int32Array
  readonly met: Uint8Array
  /** Made when the first of them has a hash: a list that is new has none. */
  rawHash: Float64Array | undefined
}

const fullness = 0.6

export function codeTable(expected: number): CodeTable {
  const blocks: Block[] = []
  let used = 0
  /** By hash: the place counted from 1; 0 where there is none. */
  let slots = new Int32Array(2 ** Math.ceil(Math.log2(Math.max(1024, expected / fullness))))
  const start = startLanes(0)
  const lanes: Lanes = { ...start }

  const hash = (code: string) => {
    lanes.a = start.a
    lanes.b = start.b
    mixText(lanes, code)
    closeLanes(lanes)
  }
  const find = (code: string): number => {
    hash(code)
    return (slots[slotOf(slots, blocks, lanes)] ?? 0) - 1
  }
  const add = (code: string, rowNo: number, rawHash: number): number => {
    if (used + 1 > slots.length * fullness) slots = doubled(slots, blocks)
    hash(code)
    const place = used
    used += 1
    slots[slotOf(slots, blocks, lanes)] = used
    if (place % inBlock === 0) blocks.push(emptyBlock())
    const block = blockOf(blocks, place)
    const at = place % inBlock
    block.a[at] = lanes.a
    block.b[at] = lanes.b
    block.rowNo[at] = rowNo
    if (rawHash !== 0) (block.rawHash ??= new Float64Array(inBlock))[at] = rawHash
    return place
  }
  return {
    find,
    add,
    rowNoAt: (place) => blockOf(blocks, place).rowNo[place % inBlock] ?? 0,
    rawHashAt: (place) => blockOf(blocks, place).rawHash?.[place % inBlock] ?? 0,
    fileRowAt: (place) => blockOf(blocks, place).fileRow[place % inBlock] ?? 0,
    awaits: (place, rawHash) => {
      const block = blocks[place >>> blockBits]
      const at = place % inBlock
      return block?.rawHash?.[at] === rawHash && block.fileRow[at] === 0
    },
    takeAt: (place, fileRow) => {
      const block = blockOf(blocks, place)
      block.fileRow[place % inBlock] = fileRow
      block.met[place % inBlock] = 1
    },
    meetAt: (place) => {
      blockOf(blocks, place).met[place % inBlock] = 1
    },
    unmet: () => unmetIn(blocks),
  }
}

function unmetIn(blocks: readonly Block[]): readonly number[] {
  const unmet = blocks.flatMap(({ rowNo, met }) =>
    Array.from(rowNo).filter((no, at) => no > 0 && met[at] === 0),
  )
  return unmet.toSorted((a, b) => a - b)
}

function blockOf(blocks: readonly Block[], place: number): Block {
  const block = blocks[place >>> blockBits]
  if (block === undefined) throw new Error(`There is no place ${place} in the table of codes`)
  return block
}

function emptyBlock(): Block {
  return {
    a: new Int32Array(inBlock),
    b: new Int32Array(inBlock),
    rowNo: new Int32Array(inBlock),
    fileRow: new Int32Array(inBlock),
    met: new Uint8Array(inBlock),
    rawHash: undefined,
  }
}

/** Where a hash stands, or the free slot where it would. */
function slotOf(slots: Int32Array, blocks: readonly Block[], { a, b }: Readonly<Lanes>): number {
  const mask = slots.length - 1
  let slot = a & mask
  for (let place = slots[slot] ?? 0; place !== 0; place = slots[slot] ?? 0) {
    const block = blockOf(blocks, place - 1)
    const at = (place - 1) % inBlock
    if (block.a[at] === a && block.b[at] === b) break
    slot = (slot + 1) & mask
  }
  return slot
}

function doubled(slots: Int32Array, blocks: readonly Block[]): Int32Array<ArrayBuffer> {
  const bigger = new Int32Array(slots.length * 2)
  for (const place of slots) {
    if (place === 0) continue
    const block = blockOf(blocks, place - 1)
    const at = (place - 1) % inBlock
    bigger[slotOf(bigger, blocks, { a: block.a[at] ?? 0, b: block.b[at] ?? 0 })] = place
  }
  return bigger
}
