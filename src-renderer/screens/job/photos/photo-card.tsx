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
import { words } from './photos.words.ts'

type Photos = { readonly path: string; readonly photos: readonly RoomPhoto[] }

/** The photos of a room: added by choosing or dropping, shown small, opened large. */
export function PhotoCard({ path, photos }: Photos) {
  const { add } = usePhotos(path)
  return (
    <Card title={words.title} says={words.says}>
      <DropPlace busy={add.isPending} take={(files) => add.mutate(files)} />
      {add.data === undefined || add.data.length === 0 ? null : (
        <Notice tone="bad" title={words.notKept}>
          <ul>
            {add.data.map(({ name, says }) => (
              <li key={name}>{words.notKeptOne(name, says)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {photos.length === 0 ? null : (
        <ul className={styles.photos} aria-label={words.list}>
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
        inputProps={{ 'aria-label': words.box, tabIndex: -1 }}
        onChange={some}
      >
        {(props) => (
          <Button {...props} variant="default" loading={busy}>
            {words.add}
          </Button>
        )}
      </FileButton>
      <span>{words.orDrop}</span>
    </div>
  )
}

type One = { readonly path: string; readonly at: number; readonly photo: RoomPhoto }

function PhotoBox({ path, at, photo }: One) {
  const { job } = useOpenJob()
  const { photoId, caption } = photo
  const asked = useAsk('photo.read', { jobId: job.jobId, photoId }, { staleMs: Infinity })
  const [large, setLarge] = useState(false)
  const name = caption === undefined || caption === '' ? words.unnamed(at + 1) : caption
  const url = asked.data === undefined ? null : `data:image/jpeg;base64,${asked.data.base64}`
  return (
    <li className={styles.photo}>
      {url === null ? (
        <p className={styles.gone} role="status">
          {asked.isError ? words.gone : words.fetching}
        </p>
      ) : (
        <button
          type="button"
          className={styles.open}
          aria-label={words.openLarge(name)}
          onClick={() => setLarge(true)}
        >
          <img className={styles.small} src={url} alt="" />
        </button>
      )}
      <DraftText path={`${path}[${at}].caption`} label={words.shows(at + 1)} optional />
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
      <Button
        variant="subtle"
        color="gray"
        aria-label={words.removeNamed(name)}
        onClick={() => setAsking(true)}
      >
        {words.remove}
      </Button>
      <Confirm
        opened={asking}
        title={words.removeTitle}
        yes={words.removeYes}
        onYes={gone}
        onNo={() => setAsking(false)}
      >
        <p>{words.removeSays(job.title)}</p>
      </Confirm>
    </Row>
  )
}
