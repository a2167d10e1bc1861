import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { call } from '../../bridge/call.ts'

/** Has a file written and fetches it, so that the window can hand it over; it is let go of when another takes its place. */
export function useMadeFile() {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  return useMutation({
    mutationFn: async (write: () => Promise<{ readonly path: string }>) => {
      const { path } = await write()
      const name = path.split(/[\\/]/).at(-1) ?? path
      const { base64 } = await call('paper.read', { name })
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const type = types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream'
      const fresh = URL.createObjectURL(new Blob([bytes], { type }))
      setUrl(fresh)
      return { name, url: fresh }
    },
  })
}

const types: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  xml: 'application/xml',
}
