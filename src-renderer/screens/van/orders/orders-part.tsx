import { Button } from '@mantine/core'
import type { OrderRow } from '../../../../src-main/domain/follow-up/order.ts'
import type { Picking } from '../../../../src-main/domain/follow-up/van.ts'
import { useRef } from 'react'
import { sentencesOf } from '../../../bridge/call.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { money } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList, Waiting } from '../../../parts/notice.tsx'
import styles from '../van.module.css'
import { OrderCard } from './order-card.tsx'
import { words } from './orders.words.ts'
import { useOrders } from './use-orders.ts'

/** The orders of a pick list: those to be made, and how each that was made stands. */
export function OrdersPart({ picking }: { readonly picking: Picking }) {
  const { list, make } = useOrders(picking.pickingNo)
  const whole = useRef<HTMLDivElement>(null)
  const problems = sentencesOf(list.error)
  if (problems.length > 0) return <ProblemList title={words.cannotOpen} problems={problems} />
  if (list.data === undefined) return <Waiting what={words.looking} />
  const { orders } = list.data
  return (
    <div ref={whole} tabIndex={-1}>
      <Stack>
        <ToOrder picking={picking} orders={orders} make={make} home={() => whole.current?.focus()} />
        {orders.map(({ orderId }) => (
          <OrderCard key={orderId} orderId={orderId} />
        ))}
      </Stack>
    </div>
  )
}

type Props = {
  readonly picking: Picking
  readonly orders: readonly OrderRow[]
  readonly make: ReturnType<typeof useOrders>['make']
  /** Takes the focus when the button that held it is gone. */
  readonly home: () => void
}

/** Suppliers of the pick list for whom no order stands. */
function ToOrder({ picking, orders, make, home }: Props) {
  const { pickingNo, closedOn, body } = picking
  if (body.orders.length === 0) return <Notice tone="good" title={words.make.none} />
  const standing = new Set(orders.filter(({ state }) => state !== 'cancelled').map((one) => one.supplierId))
  const open = body.orders.filter(({ supplierId }) => !standing.has(supplierId))
  if (open.length === 0) return null
  if (closedOn !== undefined) return <Notice tone="warn" title={words.make.closed} />
  const problems = sentencesOf(make.error)
  return (
    <Card title={words.make.title} says={words.make.says}>
      <Stack>
        <ul className={styles.plain} aria-label={words.make.title}>
          {open.map(({ supplierId, name, goodsPence }) => (
            <li key={supplierId} className={styles.made}>
              <span className={styles.grow}>
                <span className={styles.strong}>{name}</span>
              </span>
              <span className={styles.number}>{words.make.goods(money(goodsPence))}</span>
              {open.length === 1 ? null : (
                <Button
                  variant="default"
                  aria-label={`${words.make.one}: ${name}`}
                  disabled={make.isPending}
                  onClick={() => make.mutate({ pickingNo, supplierId }, { onSuccess: home })}
                >
                  {words.make.one}
                </Button>
              )}
            </li>
          ))}
        </ul>
        {problems.length === 0 ? null : <ProblemList title={words.make.notMade} problems={problems} />}
        <div>
          <Button loading={make.isPending} onClick={() => make.mutate({ pickingNo }, { onSuccess: home })}>
            {open.length === 1 ? words.make.one : words.make.all}
          </Button>
        </div>
      </Stack>
    </Card>
  )
}
