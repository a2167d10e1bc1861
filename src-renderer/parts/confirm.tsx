import { Button, Group, Modal } from '@mantine/core'
import type { ReactNode } from 'react'
import { words } from './words.ts'

type Confirm = {
  readonly opened: boolean
  readonly title: string
  readonly yes: string
  /** What leaving it is called; keeping it when absent. */
  readonly no?: string
  readonly onYes: () => void
  readonly onNo: () => void
  readonly children: ReactNode
}

/** Asks before something is gone for good. */
export function Confirm({ opened, title, yes, no = words.keep, onYes, onNo, children }: Confirm) {
  return (
    <Modal
      opened={opened}
      onClose={onNo}
      title={title}
      centered
      attributes={{ header: { role: 'presentation' } }}
    >
      {children}
      <Group mt="lg" justify="flex-end">
        <Button variant="default" onClick={onNo}>
          {no}
        </Button>
        <Button color="red.9" onClick={onYes}>
          {yes}
        </Button>
      </Group>
    </Modal>
  )
}
