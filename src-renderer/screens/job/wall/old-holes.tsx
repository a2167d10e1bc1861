import { Button } from '@mantine/core'
import { useState } from 'react'
import { oldHoleCount, measuredOldHoles } from '../../../../src-main/domain/wall.ts'
import type { OldHolePlace } from '../../../../src-main/domain/wall.ts'
import type { ExistingEmitter } from '../../../../src-main/domain/wall.ts'
import { DraftNumber } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { FieldGrid, Row } from '../../../parts/card.tsx'
import { NumberBox } from '../../../parts/wall-drawing/fields/number-box.tsx'
import styles from '../job.module.css'
import { words } from './wall.words.ts'

/** What is taken of old holes until somebody counts and measures them. */
const usual = { count: 4, diameterMm: 8, depthMm: 50 }

type Holes = { readonly path: string; readonly existing: ExistingEmitter }

/** The holes that the old fixings leave: how many and how large, and where they are if they were measured. */
export function OldHoles({ path, existing }: Holes) {
  const { change } = useOpenJob()
  if (existing.oldHoles === undefined) {
    return (
      <div className={styles.more}>
        <Button variant="default" onClick={() => change({ kind: 'set', path, value: usual })}>
          {words.holes.leaves}
        </Button>
      </div>
    )
  }
  const places = measuredOldHoles(existing)
  return (
    <div className={styles.more}>
      <h3>{words.holes.title}</h3>
      <FieldGrid>
        {places.length > 0 ? null : <DraftNumber path={`${path}.count`} label={words.holes.count} />}
        <DraftNumber path={`${path}.diameterMm`} label={words.holes.diameter} />
        <DraftNumber path={`${path}.depthMm`} label={words.holes.depth} />
      </FieldGrid>
      <p className={styles.said}>{holesInWords(existing)}</p>
      <Places path={`${path}.at`} places={places} />
      <AddPlace path={`${path}.at`} first={places.length === 0} />
      <Row>
        <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
          {words.holes.leavesNone}
        </Button>
      </Row>
    </div>
  )
}

/** What is measured of the holes, and what is only assumed. */
export function holesInWords(existing: ExistingEmitter): string {
  const count = oldHoleCount(existing)
  if (measuredOldHoles(existing).length > 0) return words.holes.measured(count)
  const { oldHoles } = existing
  const same =
    oldHoles?.count === usual.count &&
    oldHoles.diameterMm === usual.diameterMm &&
    oldHoles.depthMm === usual.depthMm
  if (!same) return words.holes.unmeasured
  const { count: holes, diameterMm, depthMm } = usual
  return `${words.holes.assumed(holes, diameterMm, depthMm)} ${words.holes.unmeasured}`
}

function Places({ path, places }: { readonly path: string; readonly places: readonly OldHolePlace[] }) {
  if (places.length === 0) return null
  return (
    <div className={styles.scroll}>
      <table className={styles.table} aria-label={words.holes.places}>
        <thead>
          <tr>
            {words.holes.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {places.map((_, at) => (
            <PlaceRow key={at} path={path} at={at} last={places.length === 1} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

type One = { readonly path: string; readonly at: number; readonly last: boolean }

function PlaceRow({ path, at, last }: One) {
  const { change } = useOpenJob()
  const name = words.holes.placeName(at + 1)
  const place = `${path}[${at}]`
  return (
    <tr>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.xMm`} label={words.holes.fromLeft(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.yMm`} label={words.holes.aboveFloor(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.count`} label={words.holes.holesAt(name)} />
      </td>
      <td>
        <Button
          variant="subtle"
          color="gray"
          aria-label={words.holes.removeNamed(name)}
          onClick={() => change({ kind: 'remove', path: last ? path : place })}
        >
          {words.holes.remove}
        </Button>
      </td>
    </tr>
  )
}

/** A place goes into the job once both of its measurements are numbers: no hole is ever put at a place that nobody measured. */
function AddPlace({ path, first }: { readonly path: string; readonly first: boolean }) {
  const { change } = useOpenJob()
  const [typed, setTyped] = useState<{ readonly xMm: unknown; readonly yMm: unknown }>(nothingTyped)
  const [wanting, setWanting] = useState(false)
  const { xMm, yMm } = typed
  const add = () => {
    if (typeof xMm !== 'number' || typeof yMm !== 'number') return setWanting(true)
    change({ kind: 'add', path, value: { xMm, yMm } satisfies OldHolePlace })
    setTyped({ ...nothingTyped, yMm })
    setWanting(false)
  }
  const wrong = (value: unknown) => (wanting && typeof value !== 'number' ? words.holes.wrong : undefined)
  return (
    <div className={styles.oldHole}>
      <NumberBox
        label={words.holes.newFromLeft}
        value={xMm}
        error={wrong(xMm)}
        set={(value) => setTyped({ ...typed, xMm: value })}
      />
      <NumberBox
        label={words.holes.newAboveFloor}
        value={yMm}
        error={wrong(yMm)}
        set={(value) => setTyped({ ...typed, yMm: value })}
      />
      <Button variant="default" onClick={add}>
        {first ? words.holes.putFirst : words.holes.putAnother}
      </Button>
    </div>
  )
}

const nothingTyped = { xMm: undefined, yMm: undefined }
