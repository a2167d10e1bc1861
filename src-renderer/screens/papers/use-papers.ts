import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import { call } from '../../bridge/call.ts'

export type PaperKind = 'quote.pdf' | 'pickList.pdf' | 'setOut.pdf'

/** A document that was made, ready to be looked at and kept. */
export type Paper = {
  readonly name: string
  readonly pages: number
  readonly kilobytes: number
  readonly path: string
  readonly url: string
}

/** Makes one kind of document, of a job as it stands or of an issued quote, and fetches what was made. */
export function usePaper(kind: PaperKind, of: { readonly job: Job } | { readonly quoteId: string }) {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  const make = useMutation({
    mutationFn: async (): Promise<Paper> => {
      const made = await call(kind, of)
      const name = made.path.split(/[\\/]/).at(-1) ?? made.path
      const { base64 } = await call('paper.read', { name })
      const blob = new Blob([bytesOf(base64)], { type: 'application/pdf' })
      const fresh = URL.createObjectURL(blob)
      setUrl(fresh)
      return { name, pages: made.pages, kilobytes: Math.ceil(made.bytes / 1024), path: made.path, url: fresh }
    },
  })
  return make
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
}
