import { Button, NativeSelect } from '@mantine/core'
import type { Boundary, HeatElement } from '../../../src-main/domain/room-heat.ts'
import { DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { boundaries } from '../../parts/words.ts'
import styles from './job.module.css'
import { UValueChooser } from './u-value/u-value-chooser.tsx'
import { words } from './heat.words.ts'

type Table = { readonly path: string; readonly elements: readonly HeatElement[] }

/** Walls, floors and ceilings through which the room loses heat, with the windows and doors in them. */
export function ElementTable({ path, elements }: Table) {
  if (elements.length === 0) return <p>{words.table.none}</p>
  return (
    <div className={styles.scroll}>
      <table className={styles.table} aria-label={words.table.label}>
        <thead>
          <tr>
            {words.table.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        {elements.map((element, at) => (
          <ElementRows key={at} path={`${path}[${at}]`} element={element} />
        ))}
      </table>
    </div>
  )
}

type Rows = { readonly path: string; readonly element: HeatElement }

function ElementRows({ path, element }: Rows) {
  const { change } = useOpenJob()
  const addOpening = () =>
    change({
      kind: 'add',
      path: `${path}.openings`,
      value: { name: words.table.newOpening, areaM2: 1, uWPerM2K: 2.8 },
    })
  return (
    <tbody>
      <tr>
        <AreaCells path={path} name={element.name} areaM2={element.areaM2} />
        <td className={styles.chosen}>
          <BoundaryKind path={`${path}.boundary`} element={element} />
        </td>
        <td>
          <BoundaryFigure path={`${path}.boundary`} boundary={element.boundary} name={element.name} />
        </td>
        <RemoveCell path={path} name={element.name} />
      </tr>
      {(element.openings ?? []).map((opening, at) => (
        <tr key={at} className={styles.opening}>
          <AreaCells path={`${path}.openings[${at}]`} name={opening.name} areaM2={opening.areaM2} />
          <td colSpan={2}>
            <span className={styles.said}>{words.table.openingIn(element.name)}</span>
          </td>
          <RemoveCell
            path={`${path}.openings[${at}]`}
            name={words.table.openingNamed(opening.name, element.name)}
          />
        </tr>
      ))}
      <tr className={styles.opening}>
        <td colSpan={6}>
          <Button
            variant="subtle"
            onClick={addOpening}
            aria-label={words.table.addOpeningNamed(element.name)}
          >
            {words.table.addOpening}
          </Button>
        </td>
      </tr>
    </tbody>
  )
}

type Cells = { readonly path: string; readonly name: string; readonly areaM2: number }

function AreaCells({ path, name, areaM2 }: Cells) {
  return (
    <>
      <td className={styles.named}>
        <DraftText bare path={`${path}.name`} label={words.table.name(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.areaM2`} label={words.table.area(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.uWPerM2K`} label={words.table.uValue(name)} />
        <UValueChooser path={`${path}.uWPerM2K`} name={name} areaM2={areaM2} />
      </td>
    </>
  )
}

function RemoveCell({ path, name }: { readonly path: string; readonly name: string }) {
  const { change } = useOpenJob()
  return (
    <td>
      <Button
        variant="subtle"
        color="gray"
        aria-label={words.table.removeNamed(name)}
        onClick={() => change({ kind: 'remove', path })}
      >
        {words.table.remove}
      </Button>
    </td>
  )
}

/** A boundary of each kind to start from. */
const newBoundary: Readonly<Record<string, Boundary>> = {
  outside: { kind: 'outside' },
  room: { kind: 'room', roomC: 18 },
  unheated: { kind: 'unheated', factor: 0.5 },
  ground: { kind: 'ground', meanOutsideC: 10 },
}

function BoundaryKind({ path, element }: Rows) {
  const { change } = useOpenJob()
  return (
    <NativeSelect
      id={`${path}.kind`}
      aria-label={words.table.beyond(element.name)}
      value={element.boundary.kind}
      data={boundaries.map(({ value, label }) => ({ value: String(value), label }))}
      onChange={({ currentTarget }) => change({ kind: 'set', path, value: newBoundary[currentTarget.value] })}
    />
  )
}

type Figure = { readonly path: string; readonly boundary: Boundary; readonly name: string }

function BoundaryFigure({ path, boundary, name }: Figure) {
  if (boundary.kind === 'room') {
    return <DraftNumber bare path={`${path}.roomC`} label={words.table.roomBeyond(name)} />
  }
  if (boundary.kind === 'unheated') {
    return <DraftNumber bare path={`${path}.factor`} label={words.table.factorBeyond(name)} />
  }
  if (boundary.kind === 'ground') {
    return <DraftNumber bare path={`${path}.meanOutsideC`} label={words.table.meanOutside(name)} />
  }
  return <span className={styles.said}>{words.table.coldestDay}</span>
}
