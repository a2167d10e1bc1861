import { useDebouncedValue } from '@mantine/hooks'
import { useLocation } from 'wouter'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { matchingCommands } from './command.ts'
import type { Command } from './command.ts'
import { words } from './commands.words.ts'
import type { Offered } from './offered.ts'

const waitMs = 150

type Options = { readonly text: string; readonly offered: Offered; readonly showLooks: () => void }

/** What the words lead to: what the window itself offers, what the open pages offer, and what the data file holds. */
export function useCommands({ text, offered, showLooks }: Options) {
  const [, go] = useLocation()
  const [settled] = useDebouncedValue(text, waitMs)
  const asked = useAsk('job.find', { text: settled }, { keepOld: true })
  const near = matchingCommands([...offered.all(), ...ownCommands(go, showLooks)], text)
  const far = asked.data === undefined ? [] : fromFile(asked.data, go)
  return {
    commands: oncePerId([...near, ...far]),
    busy: settled !== text || asked.isFetching,
    error: asked.error,
  }
}

/** What an open page offers goes before the same thing from the data file. */
export function oncePerId(commands: readonly Command[]): readonly Command[] {
  const seen = new Set<string>()
  return commands.filter(({ id }) => {
    const fresh = !seen.has(id)
    seen.add(id)
    return fresh
  })
}

function ownCommands(go: (path: string) => void, showLooks: () => void): readonly Command[] {
  const { pages, actions } = words
  const page = (id: keyof typeof pages, path: string): Command => ({
    id: `page-${id}`,
    group: 'go',
    name: pages[id],
    run: () => go(path),
  })
  return [
    { id: 'new-job', group: 'do', name: actions.newJob, run: () => go('/new-job') },
    { id: 'looks', group: 'do', name: actions.looks, keys: '?', run: showLooks },
    page('jobs', '/'),
    page('van', '/van'),
    page('catalogue', '/catalogue'),
    page('prices', '/prices'),
    page('priceFile', '/prices/file'),
    page('suppliers', '/prices/suppliers'),
    page('firm', '/firm'),
    page('start', '/start'),
  ]
}

/** Jobs, rooms and swaps as the desk found them. */
export function fromFile(found: AnswerOf<'job.find'>, go: (path: string) => void): readonly Command[] {
  return [
    ...found.jobs.map(({ jobId, title, customerName, place }): Command => ({
      id: `job ${jobId}`,
      group: 'job',
      name: title,
      says: [customerName, place].filter((part) => part !== '').join(', '),
      run: () => go(`/job/${jobId}/survey`),
    })),
    ...found.rooms.map(({ jobId, roomId, name, jobTitle }): Command => ({
      id: `room ${jobId} ${roomId}`,
      group: 'room',
      name,
      says: words.in(jobTitle),
      run: () => go(`/job/${jobId}/survey/room/${roomId}`),
    })),
    ...found.swaps.map(({ jobId, swapId, roomName, emitterName, jobTitle }): Command => ({
      id: `swap ${jobId} ${swapId}`,
      group: 'swap',
      name: words.swapIn(roomName),
      says: [emitterName, words.in(jobTitle)].filter((part) => part !== '').join(', '),
      run: () => go(`/job/${jobId}/survey/swap/${swapId}`),
    })),
  ]
}
