import { sql } from 'kysely'
import type { RawBuilder } from 'kysely'
import type { Item } from '../../domain/item.ts'
import type { TakeOffKind } from '../../domain/take-off.ts'

/** Which items are asked for. What is absent is not asked, but retired items come only when they are asked for. */
export type ItemFilter = {
  readonly kind?: TakeOffKind | undefined
  /** True for retired items only. */
  readonly retired?: boolean | undefined
  readonly favourite?: boolean | undefined
  readonly generic?: boolean | undefined
}

type Condition = RawBuilder<boolean>

/** The filter as conditions on rows of `item`. */
export function whichItems({ kind, retired, favourite, generic }: ItemFilter): readonly Condition[] {
  const favourites = sql`(select item_id from favourite)`
  return [
    sql<boolean>`item.retired = ${retired === true ? 1 : 0}`,
    ...(kind === undefined ? [] : [sql<boolean>`item.kind = ${kind}`]),
    ...(generic === undefined ? [] : [sql<boolean>`item.generic = ${generic ? 1 : 0}`]),
    ...(favourite === undefined
      ? []
      : [
          favourite
            ? sql<boolean>`item.item_id in ${favourites}`
            : sql<boolean>`item.item_id not in ${favourites}`,
        ]),
  ]
}

export function allOf(conditions: readonly Condition[]): Condition {
  return sql<boolean>`(${sql.join([...conditions], sql` and `)})`
}

/** The same filter for an item in memory; `favourites` are the ids of those that are. */
export function isWanted(
  item: Item,
  { kind, retired, favourite, generic }: ItemFilter,
  favourites: ReadonlySet<string>,
): boolean {
  return (
    (item.retired === true) === (retired === true) &&
    (kind === undefined || item.kind === kind) &&
    (generic === undefined || item.generic === generic) &&
    (favourite === undefined || favourites.has(item.itemId) === favourite)
  )
}
