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
          It leaves old holes
        </Button>
      </div>
    )
  }
  const places = measuredOldHoles(existing)
  return (
    <div className={styles.more}>
      <h3>Old holes</h3>
      <FieldGrid>
        {places.length > 0 ? null : <DraftNumber path={`${path}.count`} label="Old holes" />}
        <DraftNumber path={`${path}.diameterMm`} label="Diameter of the holes (mm)" />
        <DraftNumber path={`${path}.depthMm`} label="Depth of the holes (mm)" />
      </FieldGrid>
      <p className={styles.said}>{holesInWords(existing)}</p>
      <Places path={`${path}.at`} places={places} />
      <AddPlace path={`${path}.at`} first={places.length === 0} />
      <Row>
        <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
          It leaves no holes
        </Button>
      </Row>
    </div>
  )
}

/** What is measured of the holes, and what is only assumed. */
export function holesInWords(existing: ExistingEmitter): string {
  const count = oldHoleCount(existing)
  if (measuredOldHoles(existing).length > 0) {
    return `${count} ${count === 1 ? 'hole' : 'holes'} measured: drawn on the wall, counted for the filler, and kept clear of by the new holes.`
  }
  const { oldHoles } = existing
  const same =
    oldHoles?.count === usual.count &&
    oldHoles.diameterMm === usual.diameterMm &&
    oldHoles.depthMm === usual.depthMm
  const assumed = same ? 'Assumed until you say otherwise: 4 holes, 8 mm wide and 50 mm deep. ' : ''
  return `${assumed}Where they are is not measured, so they are not drawn, and the new holes are not checked against them.`
}

const columns = ['From the left (mm)', 'Above the floor (mm)', 'Holes there']

function Places({ path, places }: { readonly path: string; readonly places: readonly OldHolePlace[] }) {
  if (places.length === 0) return null
  return (
    <div className={styles.scroll}>
      <table className={styles.table} aria-label="Where the old holes are">
        <thead>
          <tr>
            {columns.map((column) => (
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
  const name = `old hole ${at + 1}`
  const place = `${path}[${at}]`
  return (
    <tr>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.xMm`} label={`From the left, ${name} (mm)`} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.yMm`} label={`Above the floor, ${name} (mm)`} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${place}.count`} label={`Holes at ${name}; one when empty`} />
      </td>
      <td>
        <Button
          variant="subtle"
          color="gray"
          aria-label={`Remove ${name}`}
          onClick={() => change({ kind: 'remove', path: last ? path : place })}
        >
          Remove
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
  const wrong = (value: unknown) =>
    wanting && typeof value !== 'number' ? 'Give it as a number of millimetres.' : undefined
  return (
    <div className={styles.oldHole}>
      <NumberBox
        label="New place, from the left (mm)"
        value={xMm}
        error={wrong(xMm)}
        set={(value) => setTyped({ ...typed, xMm: value })}
      />
      <NumberBox
        label="New place, above the floor (mm)"
        value={yMm}
        error={wrong(yMm)}
        set={(value) => setTyped({ ...typed, yMm: value })}
      />
      <Button variant="default" onClick={add}>
        {first ? 'Put an old hole there' : 'Put another there'}
      </Button>
    </div>
  )
}

const nothingTyped = { xMm: undefined, yMm: undefined }
