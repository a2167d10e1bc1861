import { DraftCheck, DraftChoice, DraftLines, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Stack, Wide } from '../../parts/card.tsx'
import { drainWays, systemKinds } from '../../parts/words.ts'

/** The heating system and the house, as surveyed. */
export function SystemPage() {
  return (
    <Stack>
      <Card title="Temperatures" says="What the system really runs at on the coldest day, not what it could.">
        <FieldGrid>
          <DraftNumber path="survey.system.flowC" label="Flow temperature (°C)" />
          <DraftNumber path="survey.system.returnC" label="Return temperature (°C)" />
          <DraftNumber path="survey.outsideC" label="Coldest day outside (°C)" />
        </FieldGrid>
      </Card>
      <Card title="The house">
        <FieldGrid>
          <DraftNumber path="survey.builtYear" label="Year built" />
          <DraftText path="survey.surveyedOn" label="Surveyed on" type="date" />
          <DraftText path="survey.surveyedBy" label="Surveyed by" optional />
          <Wide>
            <DraftCheck
              path="survey.frailOrChildren"
              label="Children, or people who would not pull back from a hot surface"
              optional
            />
          </Wide>
          <Wide>
            <DraftCheck path="survey.hotWork" label="There will be hot work (soldering)" optional />
          </Wide>
          <Wide>
            <DraftCheck
              path="survey.occupied"
              label="People live in the house while the work goes on"
              optional
            />
          </Wide>
          <Wide>
            <DraftLines path="survey.notes" label="Notes from the survey" />
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
    <Card title="The water">
      <FieldGrid>
        <DraftChoice path="survey.system.kind" label="System" choices={systemKinds} />
        <DraftChoice path="survey.system.drain" label="Before the work" choices={drainWays} />
        {job.survey.system.drain === 'isolatedPart' ? (
          <DraftNumber path="survey.system.drainedShare" label="Share let out (0 to 1)" />
        ) : null}
        <DraftNumber
          path="survey.system.contentLitres"
          label="Water in the system (litres)"
          hint="Empty if not known"
        />
        <DraftNumber
          path="survey.system.boilerKW"
          label="Boiler output (kW)"
          hint="Stands in for the content"
        />
        <Wide>
          <DraftCheck path="survey.system.flush" label="Flush the system with a cleaner" />
        </Wide>
      </FieldGrid>
    </Card>
  )
}
