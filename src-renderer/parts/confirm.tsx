import { Button, Group, Modal } from '@mantine/core'
import type { ReactNode } from 'react'

type Confirm = {
  readonly opened: boolean
  readonly title: string
  readonly yes: string
  readonly onYes: () => void
  readonly onNo: () => void
  readonly children: ReactNode
}

/** Asks before something is gone for good. */
export function Confirm({ opened, title, yes, onYes, onNo, children }: Confirm) {
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
          Keep it
        </Button>
        <Button color="red.9" onClick={onYes}>
          {yes}
        </Button>
      </Group>
    </Modal>
  )
}
