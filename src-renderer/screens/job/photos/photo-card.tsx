import { Button, FileButton, Modal } from '@mantine/core'
import { useState } from 'react'
import type { DragEvent } from 'react'
import type { RoomPhoto } from '../../../../src-main/domain/job.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, Row } from '../../../parts/card.tsx'
import { Confirm } from '../../../parts/confirm.tsx'
import { Notice } from '../../../parts/notice.tsx'
import styles from './photos.module.css'
import { usePhotos } from './use-photos.ts'

type Photos = { readonly path: string; readonly photos: readonly RoomPhoto[] }

/** The photos of a room: added by choosing or dropping, shown small, opened large. */
export function PhotoCard({ path, photos }: Photos) {
  const { add } = usePhotos(path)
  return (
    <Card
      title="Photos"
      says="Kept in your data folder, drawn anew: where and when they were taken is left out. A job file takes them along only when they are asked for."
    >
      <DropPlace busy={add.isPending} take={(files) => add.mutate(files)} />
      {add.data === undefined || add.data.length === 0 ? null : (
        <Notice tone="bad" title="Not every photo was kept">
          <ul>
            {add.data.map(({ name, says }) => (
              <li key={name}>
                {name}: {says}
              </li>
            ))}
          </ul>
        </Notice>
      )}
      {photos.length === 0 ? null : (
        <ul className={styles.photos} aria-label="Photos of this room">
          {photos.map((photo, at) => (
            <PhotoBox key={photo.photoId} path={path} at={at} photo={photo} />
          ))}
        </ul>
      )}
    </Card>
  )
}

type Drop = { readonly busy: boolean; readonly take: (files: readonly File[]) => void }

function DropPlace({ busy, take }: Drop) {
  const [over, setOver] = useState(false)
  const some = (files: readonly File[]) => {
    if (files.length > 0) take(files)
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    some([...event.dataTransfer.files])
  }
  return (
    <div
      className={styles.drop}
      data-over={over}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <FileButton
        multiple
        accept="image/jpeg,image/png,image/webp"
        inputProps={{ 'aria-label': 'Photos to add', tabIndex: -1 }}
        onChange={some}
      >
        {(props) => (
          <Button {...props} variant="default" loading={busy}>
            Add photos
          </Button>
        )}
      </FileButton>
      <span>or drop them here</span>
    </div>
  )
}

type One = { readonly path: string; readonly at: number; readonly photo: RoomPhoto }

function PhotoBox({ path, at, photo }: One) {
  const { job } = useOpenJob()
  const { photoId, caption } = photo
  const asked = useAsk('photo.read', { jobId: job.jobId, photoId }, { staleMs: Infinity })
  const [large, setLarge] = useState(false)
  const name = caption === undefined || caption === '' ? `Photo ${at + 1}` : caption
  const url = asked.data === undefined ? null : `data:image/jpeg;base64,${asked.data.base64}`
  return (
    <li className={styles.photo}>
      {url === null ? (
        <p className={styles.gone} role="status">
          {asked.isError ? 'This photo is not kept any more.' : 'Fetching the photo'}
        </p>
      ) : (
        <button
          type="button"
          className={styles.open}
          aria-label={`Open ${name} large`}
          onClick={() => setLarge(true)}
        >
          <img className={styles.small} src={url} alt="" />
        </button>
      )}
      <DraftText path={`${path}[${at}].caption`} label={`What photo ${at + 1} shows`} optional />
      <RemovePhoto path={path} at={at} photo={photo} name={name} />
      <Modal
        opened={large}
        onClose={() => setLarge(false)}
        title={name}
        size="90vw"
        attributes={{ header: { role: 'presentation' } }}
      >
        {url === null ? null : <img className={styles.large} src={url} alt={name} />}
      </Modal>
    </li>
  )
}

function RemovePhoto({ path, photo, name }: One & { readonly name: string }) {
  const { change, job } = useOpenJob()
  const { remove } = usePhotos(path)
  const [asking, setAsking] = useState(false)
  const gone = () => {
    setAsking(false)
    remove.mutate(photo.photoId, {
      onSettled: () =>
        change({
          kind: 'alter',
          alter: (old) => ({
            ...old,
            rooms: old.rooms.map((room) =>
              room.photos === undefined
                ? room
                : { ...room, photos: room.photos.filter((one) => one.photoId !== photo.photoId) },
            ),
          }),
        }),
    })
  }
  return (
    <Row>
      <Button variant="subtle" color="gray" aria-label={`Remove ${name}`} onClick={() => setAsking(true)}>
        Remove
      </Button>
      <Confirm
        opened={asking}
        title="Remove this photo?"
        yes="Remove the photo"
        onYes={gone}
        onNo={() => setAsking(false)}
      >
        <p>It is removed for good from {job.title}. Undo does not bring it back.</p>
      </Confirm>
    </Row>
  )
}
