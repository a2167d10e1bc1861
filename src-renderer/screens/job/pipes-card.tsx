import { Button } from '@mantine/core'
import type { Swap } from '../../../src-main/domain/job.ts'
import type { Pipe, Side } from '../../../src-main/domain/wall.ts'
import { DraftCheck, DraftChoice, DraftNumber } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { pipeCarries, pipeMaterials, pipeOrigins, pipeSizes, sides } from '../../parts/words.ts'
import styles from './job.module.css'
import { newPipe } from './new-things.ts'
import { words } from './job.words.ts'

type SwapAt = { readonly path: string; readonly swap: Swap }

/** The pipe ends as they were found. */
export function PipesCard({ path, swap }: SwapAt) {
  const { change } = useOpenJob()
  const missing = (['left', 'right'] as const).filter(
    (side) => !swap.pipes.some((pipe) => pipe.side === side),
  )
  const add = (side: Side) => {
    const like = swap.pipes[0] ?? ({ from: 'floor', outsideMm: 15, material: 'copper' } as const)
    const { from, outsideMm, material } = like
    change({ kind: 'add', path: `${path}.pipes`, value: newPipe(side, 0, { from, outsideMm, material }) })
  }
  return (
    <Card title={words.pipes.title} says={words.pipes.says}>
      <Stack>
        {swap.pipes.map((pipe, at) => (
          <PipeBox key={at} path={`${path}.pipes[${at}]`} pipe={pipe} />
        ))}
        {missing.length === 0 ? null : (
          <Row>
            {missing.map((side) => (
              <Button key={side} variant="default" onClick={() => add(side)}>
                {words.pipes.add[side]}
              </Button>
            ))}
          </Row>
        )}
      </Stack>
    </Card>
  )
}

function PipeBox({ path, pipe }: { readonly path: string; readonly pipe: Pipe }) {
  const { change } = useOpenJob()
  const name = words.pipes.names[pipe.side]
  return (
    <fieldset className={styles.item}>
      <legend>{name}</legend>
      <FieldGrid>
        <DraftChoice path={`${path}.side`} label={words.pipes.side} choices={sides} />
        <DraftNumber path={`${path}.xMm`} label={words.pipes.fromLeft} />
        <DraftChoice path={`${path}.from`} label={words.pipes.from} choices={pipeOrigins} />
        <DraftNumber path={`${path}.yMm`} label={words.pipes.end} hint={words.pipes.notMeasured} />
        <DraftChoice path={`${path}.material`} label={words.pipes.material} choices={pipeMaterials} />
        <DraftChoice path={`${path}.outsideMm`} label={words.pipes.size} choices={pipeSizes} />
        <DraftNumber path={`${path}.offWallMm`} label={words.pipes.offWall} hint={words.pipes.notMeasured} />
        <DraftChoice path={`${path}.carries`} label={words.pipes.carries} choices={pipeCarries} />
        <DraftNumber
          path={`${path}.coldVoidMm`}
          label={words.pipes.coldVoid}
          hint={words.pipes.coldVoidHint}
        />
        <Wide>
          <DraftCheck path={`${path}.fixed`} label={words.pipes.fixed} optional />
        </Wide>
      </FieldGrid>
      <Button mt="sm" variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
        {words.pipes.remove[pipe.side]}
      </Button>
    </fieldset>
  )
}
