import { Button, TextInput } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { PickingLine } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { typedNumber } from '../../../draft/typed-number.ts'
import { FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { FindPart } from '../../../parts/find-part.tsx'
import type { PartFound } from '../../../parts/find-part.tsx'
import { ProblemList } from '../../../parts/notice.tsx'
import { amount, unitWord } from '../amount.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import type { Pick, Tick } from './use-pick.ts'

type Props = { readonly line: PickingLine; readonly pick: Pick; readonly close: () => void }

/** What became of a line that is not as listed: fewer found and why, or something else taken. */
export function Otherwise({ line, pick, close }: Props) {
  const [found, setFound] = useState(String(line.tickedAt === undefined ? line.need : line.picked))
  const [why, setWhy] = useState(line.shortSays ?? '')
  const [instead, setInstead] = useState(insteadOf(line))
  const [tried, setTried] = useState(false)
  const first = useRef<HTMLInputElement>(null)
  useEffect(() => first.current?.select(), [])
  const picked = typedNumber(found)
  const wrong = typeof picked !== 'number' || picked < 0 || picked > line.need
  const problems =
    tried && pick.tick.variables?.line.lineNo === line.lineNo ? sentencesOf(pick.tick.error) : []
  const keep = () => {
    setTried(true)
    if (wrong) return
    pick.tick.mutate({ line, tick: tickOf(line, { picked, why, instead }) }, { onSuccess: close })
  }
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Stack>
        <FieldGrid>
          <TextInput
            ref={first}
            inputMode="decimal"
            label={words.otherwise.found(unitWord(line.unit))}
            description={words.otherwise.foundSays}
            value={found}
            error={tried && wrong ? words.otherwise.number(amount(line.need, line.unit)) : undefined}
            onChange={({ currentTarget }) => setFound(currentTarget.value)}
          />
          <TextInput
            label={words.otherwise.why}
            description={words.otherwise.whySays}
            placeholder={words.otherwise.usual}
            value={why}
            onChange={({ currentTarget }) => setWhy(currentTarget.value)}
          />
        </FieldGrid>
        {line.source === 'box' ? null : <SomethingElse instead={instead} setInstead={setInstead} />}
        {problems.length === 0 ? null : <ProblemList title={words.pick.notKept} problems={problems} />}
        <Row>
          <Button type="submit" loading={pick.tick.isPending}>
            {words.otherwise.keep}
          </Button>
          <Button variant="default" onClick={close}>
            {words.otherwise.leave}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

type Else = {
  readonly instead: PartFound | null
  readonly setInstead: (instead: PartFound | null) => void
}

function SomethingElse({ instead, setInstead }: Else) {
  const [finding, setFinding] = useState(false)
  if (instead !== null) {
    return (
      <Row>
        <span>{words.otherwise.takes(instead.name)}</span>
        <Button variant="default" onClick={() => setInstead(null)}>
          {words.otherwise.asListed}
        </Button>
      </Row>
    )
  }
  if (finding) return <FindPart kind={undefined} label={words.otherwise.find} choose={setInstead} />
  return (
    <Row>
      <Button variant="default" onClick={() => setFinding(true)}>
        {words.otherwise.other}
      </Button>
    </Row>
  )
}

function insteadOf({ insteadItemId, insteadSays }: PickingLine): PartFound | null {
  return insteadItemId === undefined ? null : { itemId: insteadItemId, name: insteadSays ?? insteadItemId }
}

type Said = { readonly picked: number; readonly why: string; readonly instead: PartFound | null }

function tickOf({ lineNo, need }: PickingLine, { picked, why, instead }: Said): Tick {
  const reason = why.trim() === '' ? words.otherwise.usual : why.trim()
  return {
    lineNo,
    picked,
    ...(picked < need ? { shortSays: reason } : {}),
    ...(instead === null ? {} : { insteadItemId: instead.itemId }),
  }
}
