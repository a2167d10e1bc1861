type Listener = (event: unknown, ...args: readonly unknown[]) => void
type Told = { readonly channel: string; readonly args: readonly unknown[] }
type Invoke = (channel: string, args: readonly unknown[]) => Promise<unknown>

/** Runs in the page, as text, before its own scripts: gives the preload a `require` that knows only electron. */
export function inPage() {
  const invoke = Reflect.get(window, 'standInInvoke') as Invoke
  Reflect.deleteProperty(window, 'standInInvoke')
  const listeners = new Map<string, Listener[]>()
  window.addEventListener('stand-in-told', (event) => {
    const { channel, args } = (event as CustomEvent<Told>).detail
    for (const listener of listeners.get(channel) ?? []) listener({ sender: 'the program' }, ...args)
  })
  const ipcRenderer = {
    invoke: (channel: string, ...args: readonly unknown[]) => invoke(channel, structuredClone(args)),
    on: (channel: string, listener: Listener) => {
      listeners.set(channel, [...(listeners.get(channel) ?? []), listener])
    },
    removeListener: (channel: string, listener: Listener) => {
      listeners.set(
        channel,
        (listeners.get(channel) ?? []).filter((other) => other !== listener),
      )
    },
  }
  /** Values cross the bridge as copies, functions as doors to the other side. */
  const bridged = (value: unknown): unknown => {
    if (typeof value === 'function') {
      return (...args: readonly unknown[]) =>
        bridged((value as (...a: unknown[]) => unknown)(...args.map(bridged)))
    }
    return value instanceof Promise ? value.then(bridged) : structuredClone(value)
  }
  const contextBridge = {
    exposeInMainWorld: (name: string, api: Readonly<Record<string, unknown>>) => {
      const entries = Object.entries(api).map(([key, value]) => [key, bridged(value)] as const)
      Object.defineProperty(window, name, { value: Object.freeze(Object.fromEntries(entries)) })
    },
  }
  return (module: string) => {
    if (module === 'electron') return { contextBridge, ipcRenderer }
    throw new Error(`A sandboxed preload cannot load ${module}`)
  }
}
