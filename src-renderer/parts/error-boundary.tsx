import { Button } from '@mantine/core'
import { Component } from 'react'
import type { ReactNode } from 'react'
import { Notice } from './notice.tsx'
import { words } from './words.ts'

type Inside = { readonly children: ReactNode }
type Broken = { readonly broken: boolean }

/** Keeps a mistake of ours in one page from blanking the whole window. React catches such mistakes in classes only. */
export class ErrorBoundary extends Component<Inside, Broken> {
  override state: Broken = { broken: false }

  static getDerivedStateFromError(): Broken {
    return { broken: true }
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children
    return (
      <Notice tone="bad" title={words.broken.title}>
        <p>{words.broken.says}</p>
        <Button mt="md" onClick={() => window.location.reload()}>
          {words.broken.again}
        </Button>
      </Notice>
    )
  }
}
