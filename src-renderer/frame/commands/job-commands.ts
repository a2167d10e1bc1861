import { useQueryClient } from '@tanstack/react-query'
import { useLocation } from 'wouter'
import { call } from '../../bridge/call.ts'
import type { OpenJob } from '../../draft/use-draft.ts'
import type { Command } from './command.ts'
import { words } from './commands.words.ts'
import { useOffer } from './offered.ts'
import { pressWhenThere } from './press-button.ts'

type Go = (path: string) => void

/** What can be done in an open job. */
export function useJobCommands(open: OpenJob): void {
  const [, navigate] = useLocation()
  const queries = useQueryClient()
  const copy = async () => {
    const { jobId } = await call('job.copy', { jobId: open.job.jobId })
    await queries.invalidateQueries({ queryKey: ['job.list'] })
    navigate(`/job/${jobId}/survey`)
  }
  useOffer('job', [
    ...actions(open, navigate),
    { id: 'copy', group: 'do', name: words.actions.copy, run: () => void copy() },
    ...pages(open, navigate),
    ...places(open, navigate),
  ])
}

function actions({ job, change, canUndo, canRedo }: OpenJob, go: Go): readonly Command[] {
  const { actions: names } = words
  const survey = `/job/${job.jobId}/survey`
  const paper = (id: string, name: string): Command => ({
    id,
    group: 'do',
    name,
    run: () => {
      go(`/job/${job.jobId}/papers`)
      pressWhenThere(name)
    },
  })
  const step = (kind: 'undo' | 'redo', keys: string): Command => ({
    id: kind,
    group: 'do',
    name: names[kind],
    keys,
    run: () => change({ kind }),
  })
  return [
    ...(canUndo ? [step('undo', 'Ctrl Z')] : []),
    ...(canRedo ? [step('redo', 'Ctrl Shift Z')] : []),
    { id: 'add-room', group: 'do', name: names.addRoom, run: () => go(`${survey}/add-room`) },
    { id: 'add-swap', group: 'do', name: names.addSwap, run: () => go(`${survey}/add-swap`) },
    ...(job.swaps.length === 0
      ? []
      : [paper('quote', names.quote), paper('pick-list', names.pickList), paper('set-out', names.setOut)]),
  ]
}

function pages({ job }: OpenJob, go: Go): readonly Command[] {
  const at = `/job/${job.jobId}`
  const page = (id: 'survey' | 'system' | 'price' | 'papers', path: string): Command => ({
    id: `job-${id}`,
    group: 'go',
    name: words.pages[id],
    run: () => go(`${at}${path}`),
  })
  return [
    page('survey', '/survey'),
    page('system', '/survey/system'),
    page('price', '/price'),
    page('papers', '/papers'),
  ]
}

/** The rooms and swaps of the open job, as they stand on the screen. */
function places({ job }: OpenJob, go: Go): readonly Command[] {
  const survey = `/job/${job.jobId}/survey`
  const says = words.in(job.title)
  const rooms = job.rooms.map(({ roomId, name }): Command => ({
    id: `room ${job.jobId} ${roomId}`,
    group: 'room',
    name,
    says,
    run: () => go(`${survey}/room/${roomId}`),
  }))
  const swaps = job.swaps.map(({ swapId, roomId }): Command => {
    const room = job.rooms.find((one) => one.roomId === roomId)?.name ?? ''
    return {
      id: `swap ${job.jobId} ${swapId}`,
      group: 'swap',
      name: words.swapIn(room),
      says,
      run: () => go(`${survey}/swap/${swapId}`),
    }
  })
  return [...rooms, ...swaps]
}
