import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { useAsk } from '../../bridge/use-ask.ts'
import { Card, Row } from '../../parts/card.tsx'
import { keepHere, keptHere } from '../../parts/kept-here.ts'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'

/** Before the first quote: a short form about the firm, which can wait. */
export function FirstSteps() {
  const firm = useAsk('firm.read', {})
  const [skipped, setSkipped] = useState(() => keptHere('first-steps') === 'skipped')
  if (skipped || firm.data === undefined || firm.data.firm !== null) return null
  const skip = () => {
    keepHere('first-steps', 'skipped')
    setSkipped(true)
    document.getElementById('main')?.focus()
  }
  return (
    <div className={styles.section}>
      <Card title={words.first.title} says={words.first.says}>
        <Row>
          <Button component={Link} href="/start">
            {words.first.go}
          </Button>
          <Button variant="default" onClick={skip}>
            {words.first.skip}
          </Button>
        </Row>
      </Card>
    </div>
  )
}
