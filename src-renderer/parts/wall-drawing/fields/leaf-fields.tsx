import { Button } from '@mantine/core'
import type { DoorLeaf, Obstacle } from '../../../../src-main/domain/wall.ts'
import { DraftCheck, DraftChoice, DraftNumber } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import type { Choice } from '../../words.ts'
import { sides } from '../../words.ts'
import styles from '../wall-drawing.module.css'
import { words } from './fields.words.ts'

type LeafAt = { readonly path: string; readonly obstacle: Obstacle }

const places: readonly Choice[] = [
  { value: 'thisWall', label: words.leaf.inThisWall },
  { value: 'wallAtCorner', label: words.leaf.roundCorner },
]
const frames: readonly Choice[] = [
  { value: 'near', label: words.leaf.near },
  { value: 'far', label: words.leaf.far },
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
          {words.leaf.give(name)}
        </Button>
      </div>
    )
  }
  return (
    <fieldset className={styles.leaf}>
      <legend>{words.leaf.title(name)}</legend>
      <WhereChoice path={`${path}.leaf`} leaf={leaf} />
      {leaf.in === 'thisWall' ? (
        <DraftChoice path={`${path}.leaf.hinge`} label={words.leaf.hinges} choices={sides} />
      ) : (
        <>
          <DraftChoice path={`${path}.leaf.corner`} label={words.leaf.corner} choices={sides} />
          <DraftChoice path={`${path}.leaf.hinge`} label={words.leaf.hinges} choices={frames} />
          <DraftNumber path={`${path}.leaf.jambMm`} label={words.leaf.jamb} />
        </>
      )}
      <DraftNumber path={`${path}.leaf.leafMm`} label={words.leaf.length} />
      <DraftNumber path={`${path}.leaf.opensDeg`} label={words.leaf.opens} hint={words.leaf.opensSays} />
      <DraftCheck path={`${path}.leaf.opensIntoRoom`} label={words.leaf.intoRoom} />
      <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: `${path}.leaf` })}>
        {words.leaf.leaveOut}
      </Button>
    </fieldset>
  )
}

/** The two places ask different things, so that a leaf is made anew when it changes. */
function WhereChoice({ path, leaf }: { readonly path: string; readonly leaf: DoorLeaf }) {
  const { change } = useOpenJob()
  return (
    <div className={styles.where} role="group" aria-label={words.leaf.where}>
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
