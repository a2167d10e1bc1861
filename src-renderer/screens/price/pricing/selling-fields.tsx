import { NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { categoryPrice } from '../../../../src-main/domain/pricing.ts'
import type { CategoryPrice } from '../../../../src-main/domain/pricing.ts'
import { DraftPercent } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { figureInWords } from '../../../parts/figures-in-words.ts'
import { kindWords } from '../../../parts/words.ts'
import { withSelling } from '../job-changes.ts'
import styles from '../price.module.css'
import { useUsualFigures } from './use-usual-figures.ts'
import { words as all } from './pricing.words.ts'

const words = all.selling

type Of = CategoryPrice['of']
type By = CategoryPrice['by']
const kinds = categoryPrice.unwrap().shape.of.options
const always: readonly Of[] = ['emitter', 'parts']

/** Mark-up on cost or margin of price, kind by kind; one of them for each kind, never both. */
export function SellingFields() {
  const { job } = useOpenJob()
  const [added, setAdded] = useState<readonly Of[]>([])
  const own = (job.pricing?.markUps ?? []).map(({ of }) => of)
  const shown = [...new Set([...always, ...own, ...added])]
  const left = kinds.filter((kind) => !shown.includes(kind))
  return (
    <section className={styles.part} aria-label={words.title}>
      <h3>{words.title}</h3>
      <p className={styles.under}>{words.says}</p>
      {shown.map((of) => (
        <SellingRow key={of} of={of} />
      ))}
      <NativeSelect
        label={words.ownWay}
        value=""
        data={[
          { value: '', label: words.choose },
          ...left.map((value) => ({ value, label: kindWords[value] })),
        ]}
        onChange={({ currentTarget }) => {
          const kind = kinds.find((one) => one === currentTarget.value)
          if (kind !== undefined) setAdded([...added, kind])
        }}
      />
    </section>
  )
}

function SellingRow({ of }: { readonly of: Of }) {
  const { job, change } = useOpenJob()
  const usual = useUsual(of)
  const markUps = job.pricing?.markUps ?? []
  const at = markUps.findIndex((one) => one.of === of)
  const by = markUps[at]?.by
  const choose = (to: By | null) =>
    change({
      kind: 'alter',
      alter: (now) =>
        withSelling(
          now,
          of,
          to === null ? null : { by: to, basisPoints: to === usual.by ? usual.basisPoints : 2000 },
        ),
    })
  return (
    <div className={styles.fieldRow} role="group" aria-label={kindWords[of]}>
      <NativeSelect
        label={kindWords[of]}
        value={by ?? ''}
        data={[
          {
            value: '',
            label: words.usual(words.by[usual.by], figureInWords(usual.basisPoints, 'BasisPoints')),
          },
          { value: 'markUp', label: words.choices.markUp },
          { value: 'margin', label: words.choices.margin },
        ]}
        onChange={({ currentTarget }) =>
          choose(
            currentTarget.value === 'markUp' || currentTarget.value === 'margin' ? currentTarget.value : null,
          )
        }
      />
      {by === undefined ? null : (
        <DraftPercent
          path={`pricing.markUps[${at}].basisPoints`}
          label={(by === 'markUp' ? words.markUpOn : words.marginOn)(kindWords[of].toLowerCase())}
        />
      )}
    </div>
  )
}

/** How a kind is priced where the job says nothing of it: as the firm prices emitters, or all other parts. */
function useUsual(of: Of): { readonly by: By; readonly basisPoints: number } {
  const { job } = useOpenJob()
  const figures = useUsualFigures()
  const rest = job.pricing?.markUps?.find((one) => one.of === 'parts')
  if (of !== 'emitter' && of !== 'parts' && rest !== undefined) return rest
  const group = of === 'emitter' ? 'Emitter' : 'Parts'
  const margin = figures[`money.margin${group}BasisPoints`] ?? 0
  return margin > 0
    ? { by: 'margin', basisPoints: margin }
    : { by: 'markUp', basisPoints: figures[`money.markUp${group}BasisPoints`] ?? 0 }
}
