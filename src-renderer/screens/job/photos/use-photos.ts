import { useMutation } from '@tanstack/react-query'
import type { RoomPhoto } from '../../../../src-main/domain/job.ts'
import { call, problemsOf } from '../../../bridge/call.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { pictureOnly, UnusablePhoto } from './picture-only.ts'

export type NotKept = { readonly name: string; readonly says: string }

/** Adds photos to a room and takes them away. */
export function usePhotos(path: string) {
  const { job, change } = useOpenJob()
  const { jobId } = job
  const add = useMutation({
    mutationFn: async (files: readonly File[]): Promise<readonly NotKept[]> => {
      const { mostBytes, mostPx } = await call('photo.list', { jobId })
      const troubles: NotKept[] = []
      for (const file of files) {
        try {
          const base64 = await pictureOnly(file, { mostBytes, mostPx })
          const { photoId } = await call('photo.save', { jobId, base64 })
          change({ kind: 'add', path, value: { photoId } satisfies RoomPhoto })
        } catch (error) {
          const says =
            error instanceof UnusablePhoto
              ? error.message
              : problemsOf(error)
                  .map((problem) => problem.message)
                  .join(' ')
          troubles.push({ name: file.name, says })
        }
      }
      return troubles
    },
  })
  const remove = useMutation({
    mutationFn: (photoId: string) => call('photo.remove', { jobId, photoId }),
  })
  return { add, remove, jobId }
}
