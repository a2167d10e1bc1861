/** A sentence about rows that are taken in spite of a flaw: how many rows, and the first of them. */
export type Caution = { readonly says: string; readonly rows: number; readonly rowNos: readonly number[] }

/** Rows that are named with one sentence. */
const mostRowsNamed = 5

/** Gathers what is noted about rows, each sentence once, no more sentences than `most`. */
export function cautionsHeard(most: number) {
  const bySentence = new Map<string, { rows: number; readonly rowNos: number[] }>()
  return {
    noted: (rowNo: number, says: string): void => {
      const known = bySentence.get(says)
      if (known !== undefined) {
        known.rows += 1
        if (known.rowNos.length < mostRowsNamed) known.rowNos.push(rowNo)
      } else if (bySentence.size < most) bySentence.set(says, { rows: 1, rowNos: [rowNo] })
    },
    all: (): readonly Caution[] => [...bySentence].map(([says, heard]) => ({ says, ...heard })),
  }
}
