import { Button, Modal, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { useAsk } from '../../../bridge/use-ask.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Row, Stack } from '../../../parts/card.tsx'
import { plain } from '../../../parts/figures-in-words.ts'
import { Waiting } from '../../../parts/notice.tsx'
import { Why } from '../../../parts/why.tsx'
import { ByAge } from './by-age.tsx'
import { ByGround } from './by-ground.tsx'
import { ByLayers } from './by-layers.tsx'
import type { FoundU } from './found-u.ts'
import { words } from './u-value.words.ts'

type Chooser = { readonly path: string; readonly name: string; readonly areaM2: number }

/** The button that opens the ways to find a U-value, and takes the one that was found. */
export function UValueChooser({ path, name, areaM2 }: Chooser) {
  const { change } = useOpenJob()
  const [opened, setOpened] = useState(false)
  const take = (uWPerM2K: number) => {
    change({ kind: 'set', path, value: Math.round(uWPerM2K * 100) / 100 })
    change({ kind: 'settle' })
    setOpened(false)
  }
  return (
    <>
      <Button variant="subtle" aria-label={words.findNamed(name)} onClick={() => setOpened(true)}>
        {words.find}
      </Button>
      <Modal
        opened={opened}
        onClose={() => setOpened(false)}
        title={words.title(name)}
        size="xl"
        attributes={{ header: { role: 'presentation' } }}
      >
        <Ways areaM2={areaM2} take={take} />
      </Modal>
    </>
  )
}

const ways = [
  { value: 'age', label: words.ways.age },
  { value: 'layers', label: words.ways.layers },
  { value: 'ground', label: words.ways.ground },
]

function Ways({ areaM2, take }: { readonly areaM2: number; readonly take: (uWPerM2K: number) => void }) {
  const tables = useAsk('heat.tables', {}, { staleMs: Infinity })
  const [way, setWay] = useState('age')
  const [found, setFound] = useState<FoundU>(null)
  if (tables.data === undefined) return <Waiting what={words.reading} />
  return (
    <Stack>
      <NativeSelect
        label={words.how}
        value={way}
        data={ways}
        onChange={({ currentTarget }) => {
          setFound(null)
          setWay(currentTarget.value)
        }}
      />
      {way === 'age' ? <ByAge tables={tables.data} found={setFound} /> : null}
      {way === 'layers' ? <ByLayers found={setFound} /> : null}
      {way === 'ground' ? <ByGround areaM2={areaM2} found={setFound} /> : null}
      <div role="status">
        {found === null ? (
          <p>{words.open}</p>
        ) : found.ok ? (
          <>
            <p>
              <strong>{words.found(plain(found.value.uWPerM2K))}</strong>
              {found.value.note === undefined ? '' : ` ${found.value.note}`}
            </p>
            <Limits {...found.value} />
            <Why of={words.whyOf} why={found.value.why} />
          </>
        ) : (
          <p>{found.problems.map((problem) => problem.message).join(' ')}</p>
        )}
      </div>
      <Row>
        <Button
          disabled={found?.ok !== true}
          onClick={() => found?.ok === true && take(found.value.uWPerM2K)}
        >
          {words.take}
        </Button>
      </Row>
    </Stack>
  )
}

type Limits = { readonly upperM2KPerW?: number | undefined; readonly lowerM2KPerW?: number | undefined }

/** The two limits of a construction with timber through it, as U-values too. */
function Limits({ upperM2KPerW, lowerM2KPerW }: Limits) {
  if (upperM2KPerW === undefined || lowerM2KPerW === undefined) return null
  const both = (resistance: number) => words.limit(resistance.toFixed(3), (1 / resistance).toFixed(2))
  return <p>{words.limits(both(upperM2KPerW), both(lowerM2KPerW))}</p>
}
