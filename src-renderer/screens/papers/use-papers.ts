import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import { call } from '../../bridge/call.ts'

export type PaperKind = 'quote.pdf' | 'pickList.pdf' | 'setOut.pdf'

/** A file that was made, ready to be kept: its bytes are the window’s own copy. */
export type MadeFile = { readonly name: string; readonly path: string; readonly url: string }

/** A document that was made, ready to be looked at and kept. */
export type Paper = MadeFile & { readonly pages: number; readonly kilobytes: number }

/** Makes one kind of document, of a job as it stands or of an issued quote, and fetches what was made. */
export function usePaper(kind: PaperKind, of: { readonly job: Job } | { readonly quoteId: string }) {
  return useMade(async (): Promise<Paper> => {
    const made = await call(kind, of)
    const { pages, bytes } = made
    return { ...(await fetched(made.path, 'application/pdf')), pages, kilobytes: Math.ceil(bytes / 1024) }
  })
}

/** Makes a mail draft of an issued quote, to an address or to its customer’s own. */
export function useMailDraft(quoteId: string) {
  return useMade(async (to: string): Promise<MadeFile & { readonly to: string }> => {
    const made = await call('quote.mail', { quoteId, ...(to === '' ? {} : { to }) })
    return { ...(await fetched(made.path, 'message/rfc822')), to: made.to }
  })
}

/** Makes the open form of an issued quote, for another program. */
export function useOpenForm(quoteId: string) {
  return useMade(async (): Promise<MadeFile> => {
    const { path } = await call('quote.xml', { quoteId })
    return fetched(path, 'application/xml')
  })
}

/** Gives back the memory of an earlier copy when a later one is made, and when nobody looks any more. */
function useMade<M extends MadeFile, V>(make: (of: V) => Promise<M>) {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  return useMutation({
    mutationFn: async (of: V): Promise<M> => {
      const made = await make(of)
      setUrl(made.url)
      return made
    },
  })
}

/** The bytes of a file in the papers folder, as something that a link can save. */
async function fetched(path: string, type: string): Promise<MadeFile> {
  const name = path.split(/[\\/]/).at(-1) ?? path
  const { base64 } = await call('paper.read', { name })
  return { name, path, url: URL.createObjectURL(new Blob([bytesOf(base64)], { type })) }
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
}
