import { Button } from '@mantine/core'
import { useRef } from 'react'
import { Row } from '../../../parts/card.tsx'
import paperStyles from '../papers.module.css'
import type { Paper } from '../use-papers.ts'
import styles from './life.module.css'
import { words } from './life.words.ts'

type View = { readonly paper: Paper; readonly name: string; readonly close: () => void }

/** The PDF in the viewer of the browser, which is asked to print it. */
export function PrintView({ paper, name, close }: View) {
  const frame = useRef<HTMLIFrameElement>(null)
  return (
    <div className={styles.made}>
      <Row>
        <p role="status">{words.printHint}</p>
        <Button variant="default" onClick={close}>
          {words.printDone}
        </Button>
      </Row>
      <iframe
        ref={frame}
        className={paperStyles.viewer}
        src={paper.url}
        title={words.printing(name)}
        onLoad={() => printIn(frame.current)}
      />
    </div>
  )
}

/** A viewer that lets no page speak to it has a printer sign of its own, which the hint names. */
function printIn(frame: HTMLIFrameElement | null): void {
  try {
    frame?.contentWindow?.print()
  } catch (error) {
    if (!(error instanceof DOMException)) throw error
  }
}
