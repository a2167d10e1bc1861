import { DraftCheck, DraftChoice, DraftLines, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Stack, Wide } from '../../parts/card.tsx'
import { drainWays, systemKinds } from '../../parts/words.ts'
import { words } from './job.words.ts'

/** The heating system and the house, as surveyed. */
export function SystemPage() {
  return (
    <Stack>
      <Card title={words.temperatures.title} says={words.temperatures.says}>
        <FieldGrid>
          <DraftNumber path="survey.system.flowC" label={words.temperatures.flow} />
          <DraftNumber path="survey.system.returnC" label={words.temperatures.return} />
          <DraftNumber path="survey.outsideC" label={words.temperatures.outside} />
        </FieldGrid>
      </Card>
      <Card title={words.house.title}>
        <FieldGrid>
          <DraftNumber path="survey.builtYear" label={words.house.built} />
          <DraftText path="survey.surveyedOn" label={words.house.surveyedOn} type="date" />
          <DraftText path="survey.surveyedBy" label={words.house.surveyedBy} optional />
          <Wide>
            <DraftCheck path="survey.frailOrChildren" label={words.house.frail} optional />
          </Wide>
          <Wide>
            <DraftCheck path="survey.hotWork" label={words.house.hotWork} optional />
          </Wide>
          <Wide>
            <DraftCheck path="survey.occupied" label={words.house.occupied} optional />
          </Wide>
          <Wide>
            <DraftLines path="survey.notes" label={words.house.notes} />
          </Wide>
        </FieldGrid>
      </Card>
      <Water />
    </Stack>
  )
}

function Water() {
  const { job } = useOpenJob()
  return (
    <Card title={words.water.title}>
      <FieldGrid>
        <DraftChoice path="survey.system.kind" label={words.water.system} choices={systemKinds} />
        <DraftChoice path="survey.system.drain" label={words.water.drain} choices={drainWays} />
        {job.survey.system.drain === 'isolatedPart' ? (
          <DraftNumber path="survey.system.drainedShare" label={words.water.drainedShare} />
        ) : null}
        <DraftNumber
          path="survey.system.contentLitres"
          label={words.water.content}
          hint={words.water.contentHint}
        />
        <DraftNumber path="survey.system.boilerKW" label={words.water.boiler} hint={words.water.boilerHint} />
        <Wide>
          <DraftCheck path="survey.system.flush" label={words.water.flush} />
        </Wide>
      </FieldGrid>
    </Card>
  )
}
