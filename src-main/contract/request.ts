import type { z } from 'zod'

/** One request of the contract: its name, its schemas and one line of documentation. */
export type Request<N extends string, I extends z.ZodType, O extends z.ZodType> = {
  readonly name: N
  /** A query never writes to the data file. */
  readonly kind: 'query' | 'command'
  readonly doc: string
  /** `data` when it can't answer without a data folder. */
  readonly needs: 'nothing' | 'data'
  readonly input: I
  readonly output: O
}

type Shape<I, O> = {
  readonly doc: string
  readonly needs?: 'nothing' | 'data'
  readonly input: I
  readonly output: O
}

const made =
  (kind: 'query' | 'command') =>
  <N extends string, I extends z.ZodType, O extends z.ZodType>(
    name: N,
    shape: Shape<I, O>,
  ): Request<N, I, O> => ({
    name,
    kind,
    doc: shape.doc,
    needs: shape.needs ?? 'nothing',
    input: shape.input,
    output: shape.output,
  })

export const query = made('query')
export const command = made('command')
