import { useGoToField } from '../../draft/go-to-field.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { Why } from '../../parts/why.tsx'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { words as all } from './house.words.ts'
import { useSoundJob } from './use-balance.ts'
import { useWater } from './use-water.ts'

const words = all.water

/** The water in the system, and the inhibitor that what is let out takes. */
export function WaterCard() {
  const { job } = useOpenJob()
  const goTo = useGoToField(job)
  const water = useWater(useSoundJob())
  const { content, inhibitor, cleaner, problems } = water
  if (problems.length > 0) {
    return (
      <Card title={words.title}>
        <ProblemList title={words.refused} problems={problems} goTo={goTo} />
      </Card>
    )
  }
  if (content === null || inhibitor === null) {
    return (
      <Card title={words.title}>
        <Waiting what={words.asking} />
      </Card>
    )
  }
  const { assumedKW, drainedShare } = water
  return (
    <Card title={words.title} says={words.says}>
      <Stack>
        <Amount
          litres={content.litres}
          name={words.content}
          reason={words.why.content}
          says={words.contentSays(content.surveyed, assumedKW === null ? null : plain(assumedKW))}
          why={content.why}
        />
        <Amount
          litres={inhibitor.litres}
          name={words.inhibitor}
          reason={words.why.inhibitor}
          says={words.share(plain(Math.round(drainedShare * 100)))}
          why={inhibitor.why}
        />
        {cleaner === null ? null : (
          <Amount
            litres={cleaner.litres}
            name={words.cleaner}
            reason={words.why.cleaner}
            says={words.cleanerSays}
            why={cleaner.why}
          />
        )}
      </Stack>
    </Card>
  )
}

type Amount = {
  readonly name: string
  readonly reason: string
  readonly litres: number
  readonly says: string
  readonly why: Derivation
}

function Amount({ name, reason, litres, says, why }: Amount) {
  return (
    <div>
      <p>
        {name}: <strong>{litresInWords(litres)}</strong>. {says}
      </p>
      <Why of={reason} why={why} />
    </div>
  )
}

/** Whole litres of a system, hundredths of a bottle. */
function litresInWords(litres: number): string {
  return words.litres(plain(litres < 20 ? Math.round(litres * 100) / 100 : Math.round(litres)), litres === 1)
}
