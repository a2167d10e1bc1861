import { createContext, useContext, useEffect, useMemo } from 'react'
import type { Command } from './command.ts'

/** What the open pages offer to the search over everything, by who offers it. */
export type Offered = {
  readonly offer: (owner: string, commands: readonly Command[]) => () => void
  readonly all: () => readonly Command[]
}

export const OfferedContext = createContext<Offered | null>(null)

/** A place for offers, made once for the window. */
export function useOffers(): Offered {
  return useMemo(() => {
    const byOwner = new Map<string, readonly Command[]>()
    return {
      offer: (owner, commands) => {
        byOwner.set(owner, commands)
        return () => {
          if (byOwner.get(owner) === commands) byOwner.delete(owner)
        }
      },
      all: () => [...byOwner.values()].flat(),
    }
  }, [])
}

/** Offers commands for as long as the page that calls this is open. */
export function useOffer(owner: string, commands: readonly Command[]): void {
  const offered = useContext(OfferedContext)
  useEffect(() => offered?.offer(owner, commands))
}
