import { Modal, TextInput } from '@mantine/core'
import { useEffect, useState } from 'react'
import type { KeyboardEvent } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { ProblemList } from '../../parts/notice.tsx'
import { inGroups } from './command.ts'
import type { Command } from './command.ts'
import styles from './commands.module.css'
import { words } from './commands.words.ts'
import type { Offered } from './offered.ts'
import { useCommands } from './use-commands.ts'

type Dialog = {
  readonly opened: boolean
  readonly onClose: () => void
  readonly offered: Offered
  readonly showLooks: () => void
}

/** The search over everything: one box, one list, all by keyboard. */
export function CommandDialog({ opened, onClose, ...rest }: Dialog) {
  return (
    <Modal
      opened={opened}
      onClose={onClose}
      title={words.title}
      size="xl"
      returnFocus={false}
      transitionProps={{ duration: 0 }}
      attributes={{ header: { role: 'presentation' } }}
    >
      <Search {...rest} onClose={onClose} />
    </Modal>
  )
}

const optionId = (at: number) => `command-${at}`

function Search({ offered, showLooks, onClose }: Omit<Dialog, 'opened'>) {
  const [text, setText] = useState('')
  const [at, setAt] = useState(0)
  const { commands, busy, error } = useCommands({ text, offered, showLooks })
  const groups = inGroups(commands)
  const shown = groups.flatMap((group) => group.commands)
  const here = Math.min(at, shown.length - 1)
  useEffect(() => {
    document.getElementById(optionId(here))?.scrollIntoView({ block: 'nearest' })
  }, [here])
  const run = (command: Command | undefined) => {
    if (command === undefined) return
    onClose()
    goThere(command)
  }
  const press = (event: KeyboardEvent) => {
    const next = moved(event, here, shown.length)
    if (next !== null) {
      event.preventDefault()
      setAt(next)
    }
    if (event.key === 'Enter') {
      event.preventDefault()
      run(shown[here])
    }
    // Undo in this box is for its own letters.
    if (event.ctrlKey || event.metaKey) event.stopPropagation()
  }
  return (
    <>
      <TextInput
        role="combobox"
        aria-expanded={shown.length > 0}
        aria-controls="commands-found"
        aria-autocomplete="list"
        {...(here >= 0 ? { 'aria-activedescendant': optionId(here) } : {})}
        // At once, so that no letter typed after the keys lands in the page below.
        autoFocus
        data-autofocus
        label={words.label}
        placeholder={words.placeholder}
        autoComplete="off"
        value={text}
        onKeyDown={press}
        onChange={({ currentTarget }) => {
          setText(currentTarget.value)
          setAt(0)
        }}
      />
      <p className={styles.count} role="status">
        {shown.length === 0 && !busy ? words.nothing : words.found(shown.length)}
      </p>
      {error === null ? null : <ProblemList title={words.title} problems={problemsOf(error)} />}
      <Found groups={groups} here={here} run={run} />
      <p className={styles.how}>{words.how}</p>
    </>
  )
}

type FoundProps = {
  readonly groups: ReturnType<typeof inGroups>
  readonly here: number
  readonly run: (command: Command) => void
}

function Found({ groups, here, run }: FoundProps) {
  const order = new Map(groups.flatMap((group) => group.commands).map((command, at) => [command.id, at]))
  return (
    <div id="commands-found" role="listbox" aria-label={words.list} className={styles.list} tabIndex={-1}>
      {groups.map(({ group, commands }) => (
        <div key={group} role="group" aria-label={words.groups[group]}>
          <p className={styles.group} aria-hidden>
            {words.groups[group]}
          </p>
          {commands.map((command) => {
            const at = order.get(command.id) ?? 0
            return <Option key={command.id} command={command} at={at} here={at === here} run={run} />
          })}
        </div>
      ))}
    </div>
  )
}

type OptionProps = {
  readonly command: Command
  readonly at: number
  readonly here: boolean
  readonly run: (command: Command) => void
}

function Option({ command, at, here, run }: OptionProps) {
  return (
    <div
      id={optionId(at)}
      role="option"
      aria-selected={here}
      className={styles.option}
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => run(command)}
    >
      <span className={styles.name}>{command.name}</span>
      {command.says === undefined ? null : <span className={styles.says}>{command.says}</span>}
      {command.keys === undefined ? null : <span className={styles.keys}>{command.keys}</span>}
    </div>
  )
}

/** Where a key leads from one place of a list of so many; null when it leads nowhere. */
export function moved(
  { key, ctrlKey }: Pick<KeyboardEvent, 'key' | 'ctrlKey'>,
  here: number,
  count: number,
): number | null {
  if (count === 0) return null
  if (key === 'ArrowDown') return (here + 1) % count
  if (key === 'ArrowUp') return (here - 1 + count) % count
  if (key === 'Home' && ctrlKey) return 0
  if (key === 'End' && ctrlKey) return count - 1
  return null
}

/** Does it once the dialog has given the focus back; where that leads to another page, the focus goes to the page. */
function goThere(command: Command): void {
  setTimeout(() => {
    const before = window.location.hash
    command.run()
    if (window.location.hash !== before) document.getElementById('main')?.focus()
  }, 60)
}
