import { Button } from '@mantine/core'
import { useRef, useState } from 'react'
import type { Order, OrderState } from '../../../../src-main/domain/follow-up/order.ts'
import { call, sentencesOf } from '../../../bridge/call.ts'
import { Card, Row, Stack } from '../../../parts/card.tsx'
import { dayInWords, money } from '../../../parts/figures-in-words.ts'
import { ProblemList, Verdict, Waiting } from '../../../parts/notice.tsx'
import type { Tone } from '../../../parts/notice.tsx'
import { FileButtons } from '../file-buttons.tsx'
import styles from '../van.module.css'
import { CancelForm } from './cancel-form.tsx'
import { Booked, DeliverForm } from './deliver-form.tsx'
import { Deliveries, OrderLines } from './order-lines.tsx'
import { words } from './orders.words.ts'
import { useOrder } from './use-orders.ts'
import type { OrderWork } from './use-orders.ts'

const tones: Readonly<Record<OrderState, Tone>> = {
  made: 'warn',
  sent: 'good',
  partDelivered: 'warn',
  delivered: 'good',
  cancelled: 'bad',
}

/** One order: how it stands, its lines, and what may be noted of it. */
export function OrderCard({ orderId }: { readonly orderId: string }) {
  const work = useOrder(orderId)
  const whole = useRef<HTMLDivElement>(null)
  const problems = sentencesOf(work.read.error)
  if (problems.length > 0) return <ProblemList title={words.cannotOpen} problems={problems} />
  if (work.read.data === undefined) return <Waiting what={words.looking} />
  const { order } = work.read.data
  const { supplierName, madeOn, sentOn, state, totalPence, carriagePence } = order
  const says = [
    words.order.made(dayInWords(madeOn)),
    ...(sentOn === undefined ? [] : [words.order.sent(dayInWords(sentOn))]),
    words.order.sum(money(totalPence)),
    ...(carriagePence === 0 ? [] : [words.order.carriage(money(carriagePence))]),
  ]
  return (
    <div ref={whole} tabIndex={-1}>
      <Card
        title={words.order.title(orderId, supplierName)}
        says={says.join(' · ')}
        aside={<Verdict tone={tones[state]}>{words.order.states[state]}</Verdict>}
      >
        <Stack>
          <Told order={order} />
          <OrderLines order={order} />
          <Deliveries order={order} />
          <Files orderId={orderId} />
          <Work order={order} work={work} home={() => whole.current?.focus()} />
        </Stack>
      </Card>
    </div>
  )
}

function Told({ order }: { readonly order: Order }) {
  const { cancelledOn, cancelledSays = '', says } = order
  const told = [
    ...(cancelledOn === undefined ? [] : [words.order.cancelled(dayInWords(cancelledOn), cancelledSays)]),
    ...says,
  ]
  if (told.length === 0) return null
  return (
    <ul className={styles.plain2}>
      {told.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  )
}

function Files({ orderId }: { readonly orderId: string }) {
  const { kinds, of } = words.file
  return (
    <FileButtons
      choices={[
        {
          label: kinds.pdf,
          name: of(kinds.pdf, orderId),
          write: () => call('order.pdf', { orderId }),
        },
        {
          label: kinds.csv,
          name: of(kinds.csv, orderId),
          write: () => call('order.csv', { orderId }),
        },
        {
          label: kinds.xml,
          name: of(kinds.xml, orderId),
          write: () => call('order.xml', { orderId }),
        },
      ]}
    />
  )
}

type Doing = 'deliver' | 'cancel'

type WorkProps = {
  readonly order: Order
  readonly work: OrderWork
  /** Takes the focus when the button that held it is gone. */
  readonly home: () => void
}

/** What may still happen to an order as it stands. */
function Work({ order, work, home }: WorkProps) {
  const [doing, setDoing] = useState<Doing | null>(null)
  const { orderId, state } = order
  const close = () => {
    setDoing(null)
    home()
  }
  const problems = sentencesOf(work.sent.error)
  const open = state === 'made' || state === 'sent'
  return (
    <>
      <Row>
        {state === 'made' ? (
          <Button
            loading={work.sent.isPending}
            onClick={() => work.sent.mutate({ orderId }, { onSuccess: home })}
          >
            {words.sent.button}
          </Button>
        ) : null}
        {open || state === 'partDelivered' ? (
          <Button
            variant="default"
            aria-expanded={doing === 'deliver'}
            onClick={() => setDoing(doing === 'deliver' ? null : 'deliver')}
          >
            {words.deliver.button}
          </Button>
        ) : null}
        {open ? (
          <Button
            variant="default"
            aria-expanded={doing === 'cancel'}
            onClick={() => setDoing(doing === 'cancel' ? null : 'cancel')}
          >
            {words.cancel.button}
          </Button>
        ) : null}
      </Row>
      {problems.length === 0 ? null : <ProblemList title={words.sent.notNoted} problems={problems} />}
      {doing === 'deliver' ? <DeliverForm order={order} work={work} close={close} /> : null}
      {doing === 'cancel' ? <CancelForm orderId={orderId} work={work} close={close} /> : null}
      {work.deliver.data === undefined || doing !== null ? null : (
        <Booked booked={work.deliver.data.booked} />
      )}
    </>
  )
}
