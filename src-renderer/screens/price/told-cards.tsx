import { memo } from 'react'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { useWhyPlaces } from '../../draft/use-why-places.ts'
import { Card } from '../../parts/card.tsx'
import { useHeatFirst, warmthInWords } from '../../parts/heat-in-words.ts'
import { Verdict } from '../../parts/notice.tsx'
import { useWhy, WhyButton, WhyTree } from '../../parts/why.tsx'
import styles from './price.module.css'
import { words } from './price.words.ts'

/** Whether each room is warm at the temperatures that the system runs at. */
export const WarmthCard = memo(function WarmthCard({ warmth }: Pick<Quote, 'warmth'>) {
  const first = useHeatFirst()
  return (
    <div className={styles.offstage}>
      <Card title={words.warmth.title}>
        <ul className={styles.plainList}>
          {warmth.map((one) => (
            <li key={one.swapId}>
              <strong>{one.roomName}</strong>{' '}
              <Verdict tone={one.enough ? 'good' : 'bad'}>
                {one.enough ? words.warmth.enough : words.warmth.tooCold}
              </Verdict>{' '}
              {warmthInWords(one, first)}{' '}
              <LedWhy of={words.warmth.why(one.roomName)} why={one.why} swapIds={[one.swapId]} />
            </li>
          ))}
        </ul>
      </Card>
    </div>
  )
})

/** What to mind, each with the way to what called for it. */
export const Cautions = memo(function Cautions({ cautions }: Pick<Quote, 'cautions'>) {
  if (cautions.length === 0) return null
  return (
    <div className={styles.offstage}>
      <Card title={words.cautions.title} says={words.cautions.says}>
        <ul className={styles.plainList}>
          {cautions.map((caution) => (
            <li key={caution.cautionId}>
              {caution.says} <LedWhy of={caution.says} why={caution.because} swapIds={[]} />
            </li>
          ))}
        </ul>
      </Card>
    </div>
  )
})

type Led = { readonly of: string; readonly why: Derivation; readonly swapIds: readonly string[] }

function LedWhy({ of, why, swapIds }: Led) {
  const toggle = useWhy(of)
  return (
    <>
      <WhyButton {...toggle} />
      {toggle.open ? (
        <div id={toggle.regionId}>
          <LedTree why={why} swapIds={swapIds} />
        </div>
      ) : null}
    </>
  )
}

function LedTree({ why, swapIds }: Omit<Led, 'of'>) {
  const leads = useWhyPlaces(swapIds)
  return <WhyTree why={why} leads={leads} />
}
