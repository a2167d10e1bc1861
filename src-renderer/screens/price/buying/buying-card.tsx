import { Button, Loader } from '@mantine/core'
import type { PickList } from '../../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, Row } from '../../../parts/card.tsx'
import { howMuchOf, money, plain } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList, Verdict } from '../../../parts/notice.tsx'
import { Why } from '../../../parts/why.tsx'
import styles from '../price.module.css'
import { useBuying } from './use-buying.ts'
import { words } from './buying.words.ts'

/** What to buy where, worked out when it is asked for. */
export function BuyingCard() {
  const { settled } = useOpenJob()
  const buying = useBuying(settled)
  const { plan } = buying
  return (
    <Card title={words.title} says={words.says}>
      <Row>
        <Button disabled={buying.working} onClick={buying.ask}>
          {plan === null ? words.ask : words.askAgain}
        </Button>
        {buying.slow ? (
          <>
            <Loader size="sm" aria-hidden />
            <span role="status">{words.trying}</span>
            <Button variant="default" onClick={buying.cancel}>
              {words.cancel}
            </Button>
          </>
        ) : null}
      </Row>
      {buying.problems.length > 0 ? <ProblemList title={words.refused} problems={buying.problems} /> : null}
      {buying.cancelled ? <p role="status">{words.cancelled}</p> : null}
      {plan !== null && buying.outdated ? <Notice tone="warn" title={words.outdated} /> : null}
      {plan === null ? null : <Plan plan={plan} />}
    </Card>
  )
}

function Plan({ plan }: { readonly plan: PickList }) {
  return (
    <div className={styles.plan}>
      {plan.split === undefined ? null : <SplitWords split={plan.split} why={plan.why} />}
      {plan.suppliers.map((supplier) => (
        <Order key={supplier.supplierId} order={supplier} />
      ))}
      <Cuts plan={plan} />
      {plan.missing.length === 0 ? null : (
        <Notice tone="warn" title={words.missing}>
          <ul>
            {plan.missing.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </Notice>
      )}
    </div>
  )
}

type Split = NonNullable<PickList['split']>

function SplitWords({ split, why }: { readonly split: Split; readonly why: PickList['why'] }) {
  return (
    <div>
      <p>
        <span className={styles.big}>{money(split.totalPence)}</span>{' '}
        {words.split.sums(money(split.goodsPence), money(split.carriagePence))}{' '}
        {split.proved ? (
          <Verdict tone="good">{words.split.proved}</Verdict>
        ) : (
          <Verdict tone="warn">{words.split.best}</Verdict>
        )}
      </p>
      <p>{split.says}</p>
      <Why of={words.split.why} why={why} />
      <h3>{words.split.oneSupplier}</h3>
      <ul className={styles.bullets}>
        {split.oneSupplier.map((one) => (
          <li key={one.supplierId}>
            {one.name}:{' '}
            {one.totalPence === undefined
              ? (one.cannot ?? words.split.notKnown)
              : words.split.alone(
                  money(one.totalPence),
                  money(one.carriagePence ?? 0),
                  moreThan(one.totalPence, split.totalPence),
                )}
          </li>
        ))}
      </ul>
    </div>
  )
}

function moreThan(pence: number, least: number): string {
  return pence === least ? words.split.same : words.split.more(money(pence - least))
}

function Order({ order }: { readonly order: PickList['suppliers'][number] }) {
  const { name, lines, goodsPence, carriagePence, shortOfFreePence } = order
  return (
    <section aria-label={words.order.named(name)}>
      <h3>{name}</h3>
      {goodsPence === undefined ? null : (
        <p>
          {words.order.sums(money(goodsPence), money(carriagePence ?? 0))}
          {shortOfFreePence === undefined ? '' : ` ${words.order.toFree(money(shortOfFreePence))}`}
        </p>
      )}
      <table className={styles.table} aria-label={words.order.table(name)}>
        <thead>
          <tr>
            <th scope="col">{words.order.columns.item}</th>
            <th scope="col">{words.order.columns.code}</th>
            <th scope="col" className={styles.number}>
              {words.order.columns.packs}
            </th>
            <th scope="col" className={styles.number}>
              {words.order.columns.leftOver}
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={`${line.itemId} ${line.code}`}>
              <th scope="row">{line.name}</th>
              <td>{line.code}</td>
              <td className={styles.number}>
                {line.packHolds === 1 && line.unit === 'each'
                  ? line.packs
                  : words.order.packsOf(line.packs, howMuchOf(line.packHolds, line.unit))}
              </td>
              <td className={styles.number}>
                {line.leftover === 0 ? words.order.none : howMuchOf(line.leftover, line.unit)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Cuts({ plan }: { readonly plan: PickList }) {
  if (plan.pipeCuts.length === 0) return null
  return (
    <section aria-label={words.cuts.title}>
      <h3>{words.cuts.title}</h3>
      {plan.pipeCuts.map(({ name, bars }) => (
        <div key={name}>
          <p>{name}</p>
          <ul className={styles.bullets}>
            {bars.map((bar, at) => (
              <li key={at}>
                {words.cuts.bar(
                  bar.stockId,
                  bar.cuts.map((cut) => words.cuts.cut(plain(cut.lengthMm))).join(', '),
                  plain(bar.offcutMm),
                )}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  )
}
