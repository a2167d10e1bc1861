import { Button } from '@mantine/core'
import type { DoorLeaf, Obstacle } from '../../../../src-main/domain/wall.ts'
import { DraftCheck, DraftChoice, DraftNumber } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import type { Choice } from '../../words.ts'
import { sides } from '../../words.ts'
import styles from '../wall-drawing.module.css'

type LeafAt = { readonly path: string; readonly obstacle: Obstacle }

const places: readonly Choice[] = [
  { value: 'thisWall', label: 'In this wall' },
  { value: 'wallAtCorner', label: 'In the wall round the corner' },
]
const frames: readonly Choice[] = [
  { value: 'near', label: 'On the side near this wall' },
  { value: 'far', label: 'On the far side' },
]

/** A leaf as wide as its frame leaves it (practice: 32 mm a side). */
function usualLeaf({ widthMm }: Obstacle): DoorLeaf {
  return { in: 'thisWall', hinge: 'left', leafMm: Math.max(1, widthMm - 64), opensIntoRoom: true }
}

function moved(leaf: DoorLeaf, to: unknown): DoorLeaf {
  const { leafMm, opensIntoRoom, opensDeg } = leaf
  const rest = { leafMm, opensIntoRoom, ...(opensDeg === undefined ? {} : { opensDeg }) }
  return to === 'wallAtCorner'
    ? { in: 'wallAtCorner', corner: 'left', hinge: 'near', jambMm: 100, ...rest }
    : { in: 'thisWall', hinge: 'left', ...rest }
}

/** A door's leaf: where its hinges are, how long it is, and how far it opens. */
export function LeafFields({ path, obstacle }: LeafAt) {
  const { change } = useOpenJob()
  const { leaf, kind, name } = obstacle
  if (leaf === undefined) {
    if (kind !== 'door' && kind !== 'doorSwing') return null
    return (
      <div>
        <Button
          variant="default"
          onClick={() => change({ kind: 'set', path: `${path}.leaf`, value: usualLeaf(obstacle) })}
        >
          Give the leaf of {name}
        </Button>
      </div>
    )
  }
  return (
    <fieldset className={styles.leaf}>
      <legend>The leaf of {name}</legend>
      <WhereChoice path={`${path}.leaf`} leaf={leaf} />
      {leaf.in === 'thisWall' ? (
        <DraftChoice path={`${path}.leaf.hinge`} label="Hinges" choices={sides} />
      ) : (
        <>
          <DraftChoice path={`${path}.leaf.corner`} label="Which corner" choices={sides} />
          <DraftChoice path={`${path}.leaf.hinge`} label="Hinges" choices={frames} />
          <DraftNumber path={`${path}.leaf.jambMm`} label="Its frame from this wall (mm)" />
        </>
      )}
      <DraftNumber path={`${path}.leaf.leafMm`} label="Length of the leaf (mm)" />
      <DraftNumber
        path={`${path}.leaf.opensDeg`}
        label="Opens how far (degrees)"
        hint="Empty for a quarter turn"
      />
      <DraftCheck path={`${path}.leaf.opensIntoRoom`} label="It opens into this room" />
      <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: `${path}.leaf` })}>
        Leave the leaf out
      </Button>
    </fieldset>
  )
}

/** The two places ask different things, so that a leaf is made anew when it changes. */
function WhereChoice({ path, leaf }: { readonly path: string; readonly leaf: DoorLeaf }) {
  const { change } = useOpenJob()
  return (
    <div className={styles.where} role="group" aria-label="Where the door is">
      {places.map(({ value, label }) => (
        <button
          key={value}
          type="button"
          className={styles.tool}
          aria-pressed={leaf.in === value}
          onClick={() => {
            if (leaf.in === value) return
            change({ kind: 'set', path, value: moved(leaf, value) })
            change({ kind: 'settle' })
          }}
        >
          {label}
        </button>
      ))}
    </div>
  )
}
