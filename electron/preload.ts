import { contextBridge, ipcRenderer } from 'electron'

/** The one thing the page gets: a way to ask. It cannot reach a channel of Electron's, nor Node. */
contextBridge.exposeInMainWorld('tallyplate', {
  ask: (name: string, input: unknown) => ipcRenderer.invoke('ask', name, input),
})
