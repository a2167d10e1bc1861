import { sql } from 'kysely'
import type { RawBuilder } from 'kysely'
import { z } from 'zod'
import { priceBreak } from '../../domain/price-list.ts'
import type { ListRow } from '../../domain/price-list.ts'
import { soughtIn } from '../item-match.ts'
import type { Sought } from '../item-match.ts'
import { fromJson, readRow } from '../read-row.ts'
import { filterOf } from '../sqlite/row-search/row-filter.ts'
import { saidOtherwise } from '../sqlite/row-search/row-words-said.ts'
import type { ReadTx } from '../tables.ts'
import type { OnDay } from './kept-rows.ts'

export type WhichRows = {
  readonly supplierId?: string | undefined
  readonly group?: string | undefined
  /** Words that the row's name or code must hold, or the same in other words of the trade: the rows that a search finds. */
  readonly text?: string | undefined
  readonly rowNos?: readonly number[] | undefined
  readonly linked?: boolean | undefined
  readonly stale?: boolean | undefined
  /** On which day a row is stale; wanted where `stale` is asked. */
  readonly on?: OnDay | undefined
}

/** A row of a supplier's list with its price of a day, as listed: before the discount of its group. */
export type ChosenRow = ListRow & {
  readonly rowNo: number
  readonly supplierId: string
  readonly itemId: string | null
  readonly validFrom: string
  /** False when it has no price on that day: then this is its newest one. */
  readonly inForce: boolean
}

type Found = {
  readonly row_no: number
  readonly supplier_id: string
  readonly code: string
  readonly name: string
  readonly gtin: string | null
  readonly group_key: string | null
  readonly item_id: string | null
  readonly pack_holds: number
  readonly pack_pence: number
  readonly breaks: string | null
  readonly valid_from: string
  readonly valid_to: string | null
}

/** The rows that are asked for, by supplier and code. Rows that are gone from their list are left out. */
export async function chosenRows(tx: ReadTx, which: WhichRows, day: string): Promise<readonly ChosenRow[]> {
  const rows = await chosenQuery(tx, which, day).execute()
  return rows.map((row) => chosen(row, day))
}

/** The question behind it. `newest_from` is the day on which the row's newest price begins. */
export function chosenQuery(tx: ReadTx, which: WhichRows, day: string) {
  const { supplierId, group, text = '', rowNos } = which
  const sought = soughtIn(text)
  return tx
    .selectFrom('supplier_row as r')
    .leftJoin('past_price as p', (join) =>
      join
        .onRef('p.row_no', '=', 'r.row_no')
        .on('r.valid_from', '>', day)
        .on('p.valid_from', '<=', day)
        .on((eb) => eb.or([eb('p.valid_to', 'is', null), eb('p.valid_to', '>=', day)])),
    )
    .where('r.gone_from', 'is', null)
    .where(standing(which))
    .$if(supplierId !== undefined, (row) => row.where('r.supplier_id', '=', supplierId ?? ''))
    .$if(group !== undefined, (row) => row.where('r.group_key', '=', group ?? ''))
    .$if(rowNos !== undefined, (row) =>
      row.where(sql<boolean>`r.row_no in (select value from json_each(${JSON.stringify(rowNos)}))`),
    )
    .$if(text.trim() !== '' && sought.length === 0, (row) => row.where(sql<boolean>`false`))
    .$if(sought.length > 0, (row) =>
      row.where(
        sql<boolean>`(r.code = ${text.trim()}
          or r.row_no in (select rowid from row_search where row_search match ${matchText(sought)}))`,
      ),
    )
    .select(['r.row_no', 'r.supplier_id', 'r.code', 'r.name', 'r.gtin', 'r.group_key', 'r.item_id'])
    .select(['r.item_holds', 'r.valid_from as newest_from'])
    .select((eb) => [
      eb.fn.coalesce('p.pack_holds', 'r.pack_holds').as('pack_holds'),
      eb.fn.coalesce('p.pack_pence', 'r.pack_pence').as('pack_pence'),
      sql<string | null>`case when p.row_no is null then r.breaks else p.breaks end`.as('breaks'),
      eb.fn.coalesce('p.valid_from', 'r.valid_from').as('valid_from'),
      sql<string | null>`case when p.row_no is null then r.valid_to else p.valid_to end`.as('valid_to'),
    ])
    .orderBy('r.supplier_id')
    .orderBy('r.code')
}

/** Whether a row is an item, and whether its price is old, as the search has them. */
function standing({ linked, stale, on }: WhichRows): RawBuilder<boolean> {
  if (stale !== undefined && on === undefined) throw new Error('Which prices are stale depends on the day')
  const { where, bound } = filterOf({ linked, stale, ...(on ?? { day: '', staleBefore: '' }) })
  const [first = '', ...rest] = where.split('?')
  return rest.reduce(
    (text, piece, at) => sql<boolean>`${text}${bound[at] ?? ''}${sql.raw(piece)}`,
    sql.raw<boolean>(first),
  )
}

/** Rows that hold these words, or say the same otherwise. */
function matchText(sought: readonly Sought[]): string {
  const otherwise = saidOtherwise(sought.map(({ word }) => word))
  const said = [sought, ...otherwise.map((words) => soughtIn(words.join(' ')))]
  const begun = ({ word, whole }: Sought) => (whole ? `"${word}"` : `"${word}" *`)
  return said.map((words) => `(${words.map(begun).join(' AND ')})`).join(' OR ')
}

function chosen(row: Found, day: string): ChosenRow {
  const { valid_from: validFrom, valid_to: validTo } = row
  const breaks = breaksOf(row)
  return {
    rowNo: row.row_no,
    supplierId: row.supplier_id,
    code: row.code,
    name: row.name,
    ...(row.gtin === null ? {} : { gtin: row.gtin }),
    packHolds: row.pack_holds,
    packPence: row.pack_pence,
    ...(breaks === undefined ? {} : { breaks }),
    ...(row.group_key === null ? {} : { group: row.group_key }),
    validFrom,
    ...(validTo === null ? {} : { validTo }),
    itemId: row.item_id,
    inForce: validFrom <= day && (validTo === null || validTo >= day),
  }
}

const breakList = z.array(priceBreak).readonly()

function breaksOf({ breaks, code }: Found): ListRow['breaks'] {
  if (breaks === null) return undefined
  const what = `The price breaks of the row ${code}`
  return readRow(breakList, fromJson(breaks, what), what)
}
