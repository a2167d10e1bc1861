import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { AnswerOf, InputOf, RequestName } from '../../../../src-main/contract/requests.ts'
import { requests } from '../../../../src-main/contract/requests.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import type { Outcome, Problem } from '../../../../src-main/domain/outcome.ts'
import type { FileReading } from '../../../../src-main/domain/price-list.ts'
import { deskWith, filledStore } from '../../../store/store-for-tests.ts'

export const reading: FileReading = {
  form: 'text',
  encoding: 'utf-8',
  delimiter: ',',
  headerRow: 1,
  decimal: 'point',
  dates: 'dayFirst',
  columns: [
    { at: 0, meaning: 'code' },
    { at: 1, meaning: 'name' },
    { at: 2, meaning: 'gtin' },
    { at: 3, meaning: 'packHolds' },
    { at: 4, meaning: 'price' },
    { at: 5, meaning: 'group' },
  ],
}

export const header = 'Code,Description,Barcode,Pack,Price,Group'

/** A list of so many invented rows; those whose number `dearer` picks cost 10 % more. */
export function listOf(rows: number, dearer: (at: number) => boolean = () => false): string {
  const lines = Array.from({ length: rows }, (_, at) => {
    const pence = 1000 + at * 10
    const price = ((dearer(at) ? pence * 1.1 : pence) / 100).toFixed(2)
    return `T${String(at).padStart(6, '0')},Copper elbow ${at} 15mm,,1,${price},G${at % 7}`
  })
  return [header, ...lines].join('\n')
}

export type Room = { readonly desk: Desk; readonly put: (name: string, text: string) => Promise<string> }

/** A filled store, a desk over it, and a place to put price files. */
export async function room(): Promise<Room> {
  const store = await filledStore()
  const desk = deskWith(store, { mayChoosePath: true })
  return {
    desk,
    put: async (name, text) => {
      const path = join(store.folder, name)
      await writeFile(path, text)
      return path
    },
  }
}

/** Asks as the doors do, and holds the answer against the contract. */
export async function ask<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<Outcome<AnswerOf<N>>> {
  const outcome = (await answer(name, input, desk)) as Outcome<AnswerOf<N>>
  if (!outcome.ok) return outcome
  const parsed = requests[name].output.safeParse(outcome.value)
  if (!parsed.success)
    throw new Error(`${name} answers what its contract does not say: ${parsed.error.message}`)
  return outcome
}

export function problemOf(outcome: Outcome<unknown>): Problem {
  const problem = outcome.ok ? undefined : outcome.problems[0]
  if (problem === undefined) throw new Error('It was not refused')
  return problem
}

type Asked = { readonly validFrom?: string; readonly part?: boolean; readonly supplierId?: string }
type More = Asked & { readonly links?: InputOf<'priceFile.apply'>['links'] }

export function compare(desk: Desk, path: string, more: Asked = {}) {
  return ask(desk, 'priceFile.compare', { file: { path }, supplierId: 'north', reading, ...more })
}

/** Compares a file and takes it in. */
export async function take(desk: Desk, path: string, { links, ...more }: More = {}) {
  const compared = await compare(desk, path, more)
  if (!compared.ok) return compared
  const { fileHash } = compared.value
  const input = { file: { path }, supplierId: 'north', reading, fileHash, ...more }
  return ask(desk, 'priceFile.apply', links === undefined ? input : { ...input, links })
}

/** Every row of every table as it lies in a data file, and every word of its search indexes; `but` leaves tables out. */
export function everyTable(file: string, but: readonly string[] = []): Readonly<Record<string, unknown>> {
  const raw = new Database(file)
  const names = raw
    .prepare<[], { name: string }>(
      `select name from pragma_table_list where schema = 'main' and type = 'table' and name not like 'sqlite%' order by name`,
    )
    .all()
    .map(({ name }) => name)
    .filter((name) => !but.includes(name))
  const rows = names.map((name) => [name, raw.prepare(`select * from "${name}"`).raw().all()] as const)
  const words = ['row_search', 'item_search'].map((index) => {
    raw.exec(`create virtual table temp.words_of_${index} using fts5vocab('main', '${index}', 'instance')`)
    return [
      `${index} words`,
      raw.prepare(`select term, doc from temp.words_of_${index} order by 1, 2`).raw().all(),
    ] as const
  })
  raw.close()
  return Object.fromEntries([...rows, ...words])
}
