type Handler = (event: unknown, ...args: readonly unknown[]) => unknown
type Serve = (request: Request) => Promise<Response>
type Decide = (contents: unknown, permission: string, decide: (may: boolean) => void) => void

/** What the program gave to Electron. */
export const handlers = new Map<string, Handler>()
export const schemes = new Map<string, Serve | null>()
export const sessionRules: { request: Decide | null; check: (() => boolean) | null } = {
  request: null,
  check: null,
}
/** Error boxes that a person would have seen. */
export const told: string[] = []
/** Addresses that the window asked for and did not get. */
export const blocked: string[] = []
/** Files that a person was shown in their folder. */
export const shown: string[] = []
