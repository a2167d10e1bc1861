import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { CentreChoice } from '../../../src-main/domain/wall.ts'
import type { Swap } from '../../../src-main/domain/job.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { DraftChoice, DraftNumber } from '../../draft/fields.tsx'
import { useOpenJob, useProblemsAt } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Stack } from '../../parts/card.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import { heatInWords, useHeatFirst, warmthInWords } from '../../parts/heat-in-words.ts'
import { GenericMark, ProblemList, Verdict } from '../../parts/notice.tsx'
import { centreKinds, valveFinishes, valveKinds } from '../../parts/words.ts'
import { Why } from '../../parts/why.tsx'
import { EmitterPicker } from './emitter-picker.tsx'
import styles from './job.module.css'
import { words } from './job.words.ts'

type SwapAt = { readonly path: string; readonly swap: Swap }

/** What goes up: the emitter, whether the room is warm with it, its valves and its place. */
export function EmitterCard({ path, swap }: SwapAt) {
  const { change } = useOpenJob()
  const [choosing, setChoosing] = useState(false)
  return (
    <Card
      title={words.emitter.title}
      aside={
        <Button variant="default" aria-expanded={choosing} onClick={() => setChoosing(!choosing)}>
          {choosing ? words.emitter.close : words.emitter.another}
        </Button>
      }
    >
      <Stack>
        <Chosen path={path} swap={swap} />
        {choosing ? (
          <EmitterPicker
            place={swap}
            chosenId={swap.emitterId}
            choose={({ itemId }) => {
              change({ kind: 'set', path: `${path}.emitterId`, value: itemId })
              change({ kind: 'settle' })
            }}
          />
        ) : null}
        <Placing path={path} swap={swap} />
      </Stack>
    </Card>
  )
}

function Chosen({ path, swap }: SwapAt) {
  const { quote } = useOpenJob()
  const asked = useAsk('catalogue.item', { itemId: swap.emitterId }, { staleMs: Infinity })
  const refused = useProblemsAt(`${path}.emitterId`)
  const first = useHeatFirst()
  const warmth = quote?.warmth.find((one) => one.swapId === swap.swapId)
  const problems = problemsOf(asked.error)
  if (problems.length > 0) return <ProblemList title={words.emitter.cannotFind} problems={problems} />
  const item = asked.data?.item
  return (
    <div id={`${path}.emitterId`} tabIndex={-1}>
      <p>
        <span className={styles.candidateName}>{item?.name}</span>{' '}
        {item?.generic === true ? <GenericMark /> : null}
      </p>
      {item?.kind === 'emitter' ? (
        <div className={styles.facts}>
          <span>{words.emitter.size(item.heightMm, item.widthMm, item.depthMm)}</span>
          <span>{words.emitter.rated(heatInWords(item.ratedW, first))}</span>
          <span>{words.emitter.dry(plain(item.dryKg))}</span>
          <span>{words.emitter.pipeCentres(item.pipeCentresMm)}</span>
        </div>
      ) : null}
      {refused === undefined ? null : <Verdict tone="bad">{refused}</Verdict>}
      {warmth === undefined ? null : (
        <div>
          <Verdict tone={warmth.enough ? 'good' : 'bad'}>{warmthInWords(warmth, first)}</Verdict>{' '}
          <Why of={words.emitter.whyWarm} why={warmth.why} />
        </div>
      )}
    </div>
  )
}

function Placing({ path, swap }: SwapAt) {
  return (
    <FieldGrid>
      <DraftChoice path={`${path}.valves.kind`} label={words.emitter.valves} choices={valveKinds} />
      <DraftChoice path={`${path}.valves.finish`} label={words.emitter.valveFinish} choices={valveFinishes} />
      <Centre path={`${path}.centre`} centre={swap.centre} />
      {swap.centre.kind === 'at' ? (
        <DraftNumber path={`${path}.centre.xMm`} label={words.emitter.centreLine} />
      ) : null}
      <DraftNumber path={`${path}.bottomMm`} label={words.emitter.bottom} />
      <DraftNumber path={`${path}.elementW`} label={words.emitter.element} hint={words.emitter.elementHint} />
    </FieldGrid>
  )
}

const centres: Readonly<Record<string, CentreChoice>> = {
  betweenPipes: { kind: 'betweenPipes' },
  'fromPipe:left': { kind: 'fromPipe', side: 'left' },
  'fromPipe:right': { kind: 'fromPipe', side: 'right' },
  middleOfWall: { kind: 'middleOfWall' },
  at: { kind: 'at', xMm: 1000 },
}

function Centre({ path, centre }: { readonly path: string; readonly centre: CentreChoice }) {
  const { change } = useOpenJob()
  const error = useProblemsAt(path)
  return (
    <NativeSelect
      id={path}
      label={words.emitter.middle}
      error={error}
      value={centre.kind === 'fromPipe' ? `fromPipe:${centre.side}` : centre.kind}
      data={centreKinds.map(({ value, label }) => ({ value: String(value), label }))}
      onChange={({ currentTarget }) => change({ kind: 'set', path, value: centres[currentTarget.value] })}
    />
  )
}
