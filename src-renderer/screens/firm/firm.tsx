import { Button } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { Link, useParams } from 'wouter'
import type { Firm } from '../../../src-main/domain/firm.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { problemsOf } from '../../bridge/call.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { Notice, ProblemList, Waiting } from '../../parts/notice.tsx'
import { FiguresCard } from './figures-card.tsx'
import { FirmBox, UnitBoxes } from './firm-boxes.tsx'
import type { Boxes } from './firm-boxes.tsx'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { LogoBox } from './logo-box.tsx'
import { NumbersBox } from './numbers-box.tsx'
import { fieldPaths, textOf, useFirm } from './use-firm.ts'
import type { FirmText } from './use-firm.ts'

/** Who the quotes are from, and the firm's own figures. */
export function FirmScreen() {
  const { asked, save } = useFirm()
  useDocumentTitle(words.documentTitle)
  return (
    <div className={styles.page}>
      <Stack>
        <div>
          <h1>{words.title}</h1>
          <p className={styles.under}>{words.says}</p>
          <Link href="/start">{words.steps}</Link>
        </div>
        <Body asked={asked} save={save} />
        <FiguresCard />
      </Stack>
    </div>
  )
}

type Both = ReturnType<typeof useFirm>

function Body({ asked, save }: Both) {
  if (asked.isPending) return <Waiting what={words.looking} />
  if (asked.error !== null) {
    return (
      <ProblemList title={words.cannotShow} problems={problemsOf(asked.error)}>
        <Button mt="md" onClick={() => void asked.refetch()}>
          {words.tryAgain}
        </Button>
      </ProblemList>
    )
  }
  return <FirmForm old={asked.data.firm} save={save} />
}

function FirmForm({ old, save }: { readonly old: Firm | null; readonly save: Both['save'] }) {
  const [text, setText] = useState(textOf(old))
  const problems = problemsOf(save.error).map(inOwnWords)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    save.mutate(text)
  }
  const set = (changes: Partial<FirmText>) => {
    if (!save.isIdle) save.reset()
    setText({ ...text, ...changes })
  }
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        {problems.length === 0 ? null : (
          <ProblemList
            title={words.notSaved}
            problems={problems}
            goTo={(path) => document.getElementById(path)?.focus()}
          />
        )}
        <Letterhead text={text} set={set} problems={problems} logoChanged={text.logo !== old?.logo} />
        <Card title={words.numbers.title}>
          <NumbersBox text={text} set={set} problems={problems} />
        </Card>
        <Card title={words.units.title}>
          <UnitBoxes text={text} set={set} />
        </Card>
        <Row>
          <Button type="submit" loading={save.isPending}>
            {words.save}
          </Button>
        </Row>
        {save.isSuccess ? <SavedNotice /> : null}
      </Stack>
    </form>
  )
}

/** The pattern of a number is told by what it needs, not by its letters alone. */
function inOwnWords(problem: Problem): Problem {
  return problem.path === fieldPaths.quoteNumbers ? { ...problem, message: words.numbers.wrong } : problem
}

function Letterhead({ logoChanged, ...boxes }: Boxes & { readonly logoChanged: boolean }) {
  return (
    <Card title={words.letterhead}>
      <FieldGrid>
        <Wide>
          <FirmBox field="name" {...boxes} />
        </Wide>
        <FirmBox field="phone" {...boxes} />
        <FirmBox field="email" {...boxes} />
        <FirmBox field="taxNumber" {...boxes} />
        <FirmBox field="address" {...boxes} tall />
        <FirmBox field="registrations" {...boxes} tall />
        <Wide>
          <LogoBox logo={boxes.text.logo} changed={logoChanged} set={(logo) => boxes.set({ logo })} />
        </Wide>
        <Wide>
          <FirmBox field="terms" {...boxes} tall />
        </Wide>
      </FieldGrid>
    </Card>
  )
}

/** Where the person came from, so that the way leads back. */
function SavedNotice() {
  const { jobId } = useParams<{ jobId?: string }>()
  return (
    <div role="status">
      <Notice tone="good" title={words.saved}>
        {jobId === undefined ? (
          <Link href="/">{words.toJobs}</Link>
        ) : (
          <Link href={`/job/${jobId}/papers`}>{words.toQuote}</Link>
        )}
      </Notice>
    </div>
  )
}
