import { contextBridge, ipcRenderer } from 'electron'

/** All that the window can reach: ask a request, and hear what the program tells it. */
contextBridge.exposeInMainWorld('tailpiece', {
  call: (name: string, input: unknown): Promise<unknown> => ipcRenderer.invoke('call', name, input),
  /** Calls `listener`, without the event, whenever `what` is told; the answer stops that. */
  on: (what: string, listener: () => void): (() => void) => {
    const hear = (_event: unknown, told: string) => {
      if (told === what) listener()
    }
    ipcRenderer.on('told', hear)
    return () => {
      ipcRenderer.removeListener('told', hear)
    }
  },
})
