import { Button, Loader } from '@mantine/core'
import type { PickList } from '../../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, Row } from '../../../parts/card.tsx'
import { howMuchOf, money, plain } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList, Verdict } from '../../../parts/notice.tsx'
import { Why } from '../../../parts/why.tsx'
import styles from '../price.module.css'
import { useBuying } from './use-buying.ts'

/** What to buy where, worked out when it is asked for. */
export function BuyingCard() {
  const { settled } = useOpenJob()
  const buying = useBuying(settled)
  const { plan } = buying
  return (
    <Card
      title="Buying"
      says="The cheapest split over your suppliers, with carriage, minimum orders, packs and pipe cuts in mind."
    >
      <Row>
        <Button disabled={buying.working} onClick={buying.ask}>
          {plan === null ? 'Work out what to buy where' : 'Work it out again'}
        </Button>
        {buying.slow ? (
          <>
            <Loader size="sm" aria-hidden />
            <span role="status">Trying ways to split the order …</span>
            <Button variant="default" onClick={buying.cancel}>
              Cancel
            </Button>
          </>
        ) : null}
      </Row>
      {buying.problems.length > 0 ? (
        <ProblemList title="It can't be split" problems={buying.problems} />
      ) : null}
      {buying.cancelled ? <p role="status">Cancelled. Nothing was changed.</p> : null}
      {plan !== null && buying.outdated ? (
        <Notice tone="warn" title="The job has changed since. Work it out again." />
      ) : null}
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
        <Notice tone="warn" title="Nobody sells these yet">
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
        <span className={styles.big}>{money(split.totalPence)}</span> before VAT: goods{' '}
        {money(split.goodsPence)}, carriage {money(split.carriagePence)}.{' '}
        {split.proved ? (
          <Verdict tone="good">Nothing is cheaper</Verdict>
        ) : (
          <Verdict tone="warn">The best that was found in time</Verdict>
        )}
      </p>
      <p>{split.says}</p>
      <Why of="what to buy where" why={why} />
      <h3>From one supplier alone</h3>
      <ul className={styles.bullets}>
        {split.oneSupplier.map((one) => (
          <li key={one.supplierId}>
            {one.name}:{' '}
            {one.totalPence === undefined
              ? (one.cannot ?? 'not known')
              : `${money(one.totalPence)}, of which carriage ${money(one.carriagePence ?? 0)}; ${moreThan(one.totalPence, split.totalPence)}`}
          </li>
        ))}
      </ul>
    </div>
  )
}

function moreThan(pence: number, least: number): string {
  return pence === least ? 'the same' : `${money(pence - least)} more`
}

function Order({ order }: { readonly order: PickList['suppliers'][number] }) {
  const { name, lines, goodsPence, carriagePence, shortOfFreePence } = order
  return (
    <section aria-label={`Order: ${name}`}>
      <h3>{name}</h3>
      {goodsPence === undefined ? null : (
        <p>
          Goods {money(goodsPence)}, carriage {money(carriagePence ?? 0)}.
          {shortOfFreePence === undefined
            ? ''
            : ` ${money(shortOfFreePence)} more in goods would bring it free of carriage.`}
        </p>
      )}
      <table className={styles.table} aria-label={`To buy: ${name}`}>
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">Code</th>
            <th scope="col" className={styles.number}>
              Packs
            </th>
            <th scope="col" className={styles.number}>
              Left over
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
                  : `${line.packs} x ${howMuchOf(line.packHolds, line.unit)}`}
              </td>
              <td className={styles.number}>
                {line.leftover === 0 ? 'none' : howMuchOf(line.leftover, line.unit)}
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
    <section aria-label="Pipe to cut">
      <h3>Pipe to cut</h3>
      {plan.pipeCuts.map(({ name, bars }) => (
        <div key={name}>
          <p>{name}</p>
          <ul className={styles.bullets}>
            {bars.map((bar, at) => (
              <li key={at}>
                {bar.stockId}: {bar.cuts.map((cut) => `${plain(cut.lengthMm)} mm`).join(', ')}; left over{' '}
                {plain(bar.offcutMm)} mm
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  )
}
