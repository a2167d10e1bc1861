import { memo } from 'react'
import type { Override } from '../../../src-main/domain/job.ts'
import type { QuoteLine } from '../../../src-main/domain/quote.ts'
import { useWhyPlaces } from '../../draft/use-why-places.ts'
import { Card } from '../../parts/card.tsx'
import { howMuchOf, money } from '../../parts/figures-in-words.ts'
import { GenericMark } from '../../parts/notice.tsx'
import { useWhy, WhyButton, WhyTree } from '../../parts/why.tsx'
import { sameGroup } from './group-lines.ts'
import type { LineGroup } from './group-lines.ts'
import styles from './price.module.css'
import { canBeChanged, overrideOf, whyForCustomer } from './priced-line.ts'
import { words as all } from './price.words.ts'

const words = all.lines

type Shared = {
  /** Nothing of the firm's own is shown. */
  readonly looks: boolean
  readonly openChange: (lineId: string) => void
}
type Table = Shared & { readonly group: LineGroup; readonly overrides: readonly Override[] }

/** The lines of one room, or of the whole job; drawn again only when one of them changes. */
export const LineTable = memo(function LineTable({ group, overrides, ...shared }: Table) {
  return (
    <div className={styles.offstage}>
      <Card title={group.title} aside={<strong>{words.beforeVat(money(group.netPence))}</strong>}>
        <table className={styles.table} aria-label={words.named(group.title)}>
          <thead>
            <tr>
              <th scope="col">{words.columns.what}</th>
              <th scope="col" className={styles.number}>
                {words.columns.howMuch}
              </th>
              <th scope="col" className={styles.number}>
                {words.columns.price}
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {group.lines.map((line) => (
              <LineRows key={line.lineId} line={line} override={overrideOf(line, overrides)} {...shared} />
            ))}
          </tbody>
        </table>
      </Card>
    </div>
  )
}, sameTable)

function sameTable(a: Table, b: Table): boolean {
  const shared = a.looks === b.looks && a.openChange === b.openChange && a.overrides === b.overrides
  return shared && sameGroup(a.group, b.group)
}

type Row = Shared & { readonly line: QuoteLine; readonly override: Override | undefined }

/** Drawn again only when its own line changes: a stroke of a key in one place leaves the other rows alone. */
const LineRows = memo(function LineRows({ line, override, looks, openChange }: Row) {
  const why = useWhy(line.name)
  const shown = looks ? whyForCustomer(line) : line.why
  return (
    <>
      <tr data-line={line.lineId}>
        <th scope="row" className={line.section === 'emitter' ? styles.emitterName : undefined}>
          {line.name} {line.generic ? <GenericMark /> : null}
          {line.staleSays === undefined || looks ? null : <StaleMark says={line.staleSays} />}
          {override === undefined || looks ? null : <Changed line={line} override={override} />}
        </th>
        <td className={styles.number}>{howMuchOf(line.quantity, line.unit)}</td>
        <td className={styles.number}>
          {line.was?.netPence === undefined || looks ? null : <Struck was={money(line.was.netPence)} />}
          {money(line.netPence)}
        </td>
        <td className={styles.why}>
          <span className={styles.pills}>
            {shown === null ? null : <WhyButton {...why} />}
            {looks || !canBeChanged(line) ? null : (
              <button
                type="button"
                id={`change-${line.lineId}`}
                className={styles.pill}
                aria-haspopup="dialog"
                aria-label={words.changeNamed(line.name)}
                onClick={() => openChange(line.lineId)}
              >
                {words.change}
              </button>
            )}
          </span>
        </td>
      </tr>
      {why.open && shown !== null ? (
        <tr>
          <td colSpan={4} id={why.regionId} className={styles.reasons}>
            <LineWhy line={line} why={shown} />
          </td>
        </tr>
      ) : null}
    </>
  )
})

function LineWhy({ line, why }: { readonly line: QuoteLine; readonly why: QuoteLine['why'] }) {
  const leads = useWhyPlaces(line.swapIds)
  return <WhyTree why={why} leads={leads} />
}

/** What a person changed on a line: the old value struck through beside the new one, and the reason. */
function Changed({ line, override }: { readonly line: QuoteLine; readonly override: Override }) {
  const { quantity, itemId, reason } = override
  const { was, unit } = line
  return (
    <span className={styles.changed}>
      {words.byHand}{' '}
      {quantity === undefined || was?.quantity === undefined ? null : (
        <>
          <Struck was={howMuchOf(was.quantity, unit)} />
          {words.needed(howMuchOf(quantity, unit))}{' '}
        </>
      )}
      {itemId === undefined || was?.name === undefined ? null : (
        <>
          <Struck was={was.name} />
          {line.name};{' '}
        </>
      )}
      {reason}
    </span>
  )
}

function Struck({ was }: { readonly was: string }) {
  return (
    <>
      <del className={styles.struck}>
        <span className={styles.spoken}>{words.was}</span>
        {was}
      </del>{' '}
      <span className={styles.spoken}>{words.isNow}</span>
    </>
  )
}

/** An old price, in words: what is stale, since when, and what to do. */
function StaleMark({ says }: { readonly says: string }) {
  return (
    <details className={styles.stale}>
      <summary>{words.oldPrice}</summary>
      <p>{says}</p>
    </details>
  )
}
