import { NativeSelect } from '@mantine/core'
import {
  reverseChargeWording,
  roundingRule,
  taxCategory,
  taxRounding,
} from '../../../../src-main/domain/pricing.ts'
import { useOpenJob, useProblemsAt } from '../../../draft/use-draft.ts'
import { FieldGrid } from '../../../parts/card.tsx'
import { withPricing, withTax } from '../job-changes.ts'
import { roundingChoices, ruleChoices, sectionWords, taxChoices } from '../tax.words.ts'
import styles from '../price.module.css'
import { words as all } from './pricing.words.ts'

const words = all.tax

const plainData = (choices: typeof taxChoices) =>
  choices.map(({ value, label }) => ({ value: String(value), label }))

/** Which VAT is borne by what, reverse charge, and how the tax is rounded. */
export function TaxFields() {
  const { job, change } = useOpenJob()
  const reverse = job.pricing?.taxTreatment === 'reverseCharge'
  const treat = (to: string) =>
    change({
      kind: 'alter',
      alter: (now) =>
        withPricing(now, (pricing) => ({
          ...pricing,
          taxTreatment: to === 'reverseCharge' ? 'reverseCharge' : 'usual',
        })),
    })
  return (
    <section className={styles.part} aria-label={words.title}>
      <h3>{words.title}</h3>
      <p className={styles.under}>{words.says}</p>
      <FieldGrid>
        {(Object.keys(sectionWords) as readonly (keyof typeof sectionWords)[]).map((section) => (
          <SectionTax key={section} section={section} />
        ))}
      </FieldGrid>
      <FieldGrid>
        <NativeSelect
          label={words.who}
          value={reverse ? 'reverseCharge' : 'usual'}
          data={[
            { value: 'usual', label: words.usual },
            { value: 'reverseCharge', label: words.reverseCharge },
          ]}
          onChange={({ currentTarget }) => treat(currentTarget.value)}
        />
        <Rounding />
      </FieldGrid>
      {reverse ? (
        <p>
          {words.willSay} <strong>{reverseChargeWording}</strong>.
        </p>
      ) : null}
    </section>
  )
}

function SectionTax({ section }: { readonly section: keyof typeof sectionWords }) {
  const { job, change } = useOpenJob()
  return (
    <NativeSelect
      label={sectionWords[section]}
      value={job.pricing?.lineCategories?.[section] ?? 'standard'}
      data={plainData(taxChoices)}
      onChange={({ currentTarget }) => {
        const picked = taxCategory.parse(currentTarget.value)
        const category = picked === 'standard' ? null : picked
        change({
          kind: 'alter',
          alter: (now) => withTax(now, { of: 'lineCategories', name: section }, category),
        })
      }}
    />
  )
}

function Rounding() {
  const { job, change } = useOpenJob()
  const error = useProblemsAt('pricing.rule')
  return (
    <>
      <NativeSelect
        label={words.where}
        value={job.pricing?.rounding ?? 'document'}
        data={plainData(roundingChoices)}
        onChange={({ currentTarget }) => {
          const rounding = taxRounding.parse(currentTarget.value)
          change({
            kind: 'alter',
            alter: (now) => withPricing(now, (pricing) => ({ ...pricing, rounding })),
          })
        }}
      />
      <NativeSelect
        id="pricing.rule"
        label={words.penny}
        value={job.pricing?.rule ?? 'half-up'}
        error={error}
        data={plainData(ruleChoices)}
        onChange={({ currentTarget }) => {
          const rule = roundingRule.parse(currentTarget.value)
          change({ kind: 'alter', alter: (now) => withPricing(now, (pricing) => ({ ...pricing, rule })) })
        }}
      />
    </>
  )
}
