import { Button } from '@mantine/core'
import { memo, useState } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import { Card } from '../../parts/card.tsx'
import { SwapOnWall } from '../../parts/swap-on-wall.tsx'
import { words as all } from './price.words.ts'

const words = all.walls

/** So many drawings are shown at once; of more, each when it is asked for. */
const fewWalls = 3

/** Each swap on its wall. */
export const Walls = memo(function Walls({ settled }: { readonly settled: Job }) {
  return settled.swaps.map((swap) => (
    <OneWall key={swap.swapId} swap={swap} settled={settled} open={settled.swaps.length <= fewWalls} />
  ))
})

type Wall = {
  readonly swap: Parameters<typeof SwapOnWall>[0]['swap']
  readonly settled: Job
  readonly open: boolean
}

function OneWall({ swap, settled, open }: Wall) {
  const [shown, setShown] = useState(open)
  const room = settled.rooms.find(({ roomId }) => roomId === swap.roomId)?.name ?? ''
  const drawing = <SwapOnWall job={settled} swap={swap} />
  const button = (
    <Button variant="default" aria-label={words.showNamed(room)} onClick={() => setShown(true)}>
      {words.show}
    </Button>
  )
  return <Card title={words.title(room)}>{shown ? drawing : button}</Card>
}
