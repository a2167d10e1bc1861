import { Button } from '@mantine/core'
import type { Swap } from '../../../src-main/domain/job.ts'
import type { Pipe, Side } from '../../../src-main/domain/wall.ts'
import { DraftCheck, DraftChoice, DraftNumber } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { pipeCarries, pipeMaterials, pipeOrigins, pipeSizes, sides } from '../../parts/words.ts'
import styles from './job.module.css'
import { newPipe } from './new-things.ts'

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
    <Card title="The pipes" says="Measured from the wall’s left end to the middle of each pipe.">
      <Stack>
        {swap.pipes.map((pipe, at) => (
          <PipeBox key={at} path={`${path}.pipes[${at}]`} pipe={pipe} />
        ))}
        {missing.length === 0 ? null : (
          <Row>
            {missing.map((side) => (
              <Button key={side} variant="default" onClick={() => add(side)}>
                Add the {side} pipe
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
  const name = pipe.side === 'left' ? 'Left pipe' : 'Right pipe'
  return (
    <fieldset className={styles.item}>
      <legend>{name}</legend>
      <FieldGrid>
        <DraftChoice path={`${path}.side`} label="Side" choices={sides} />
        <DraftNumber path={`${path}.xMm`} label="From the left (mm)" />
        <DraftChoice path={`${path}.from`} label="Comes out of" choices={pipeOrigins} />
        <DraftNumber path={`${path}.yMm`} label="Its end above the floor (mm)" hint="Empty if not measured" />
        <DraftChoice path={`${path}.material`} label="Material" choices={pipeMaterials} />
        <DraftChoice path={`${path}.outsideMm`} label="Size" choices={pipeSizes} />
        <DraftNumber
          path={`${path}.offWallMm`}
          label="Its middle off the wall (mm)"
          hint="Empty if not measured"
        />
        <DraftChoice path={`${path}.carries`} label="Carries" choices={pipeCarries} />
        <DraftNumber
          path={`${path}.coldVoidMm`}
          label="Through a cold void (mm)"
          hint="Its length there, or empty"
        />
        <Wide>
          <DraftCheck
            path={`${path}.fixed`}
            label="It cannot be moved (in a screed, behind tiles that stay)"
            optional
          />
        </Wide>
      </FieldGrid>
      <Button mt="sm" variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
        Remove the {pipe.side} pipe
      </Button>
    </fieldset>
  )
}
