// Runs before the page's own scripts, once in the page's world and once in the preload script's. The two halves talk
// through synchronous events on the one document they share; Chromium clones what an event carries between worlds, so
// that no object of one world is ever reached from the other.
// biome-ignore lint/correctness/noUnusedVariables: the file is sent to Chromium as text and called there.
function bridgeWorlds(side, preload) {
  const functions = new Map()
  const own = side === 'preload' ? 'from-page' : 'from-preload'
  const other = side === 'preload' ? 'from-preload' : 'from-page'

  const encode = value => {
    if (typeof value === 'function' || value instanceof Promise) {
      const number = functions.size
      const isPromise = value instanceof Promise
      functions.set(number, isPromise ? (fulfil, reject) => value.then(fulfil, reject) : value)
      return { crosses: isPromise ? 'promise' : 'function', number }
    }
    if (value instanceof Error) return { crosses: 'error', message: value.message }
    if (Array.isArray(value)) return { crosses: 'list', items: value.map(encode) }
    if (value !== null && typeof value === 'object')
      return { crosses: 'object', entries: Object.entries(value).map(([key, inner]) => [key, encode(inner)]) }
    return { crosses: 'value', value: structuredClone(value) }
  }
  const decode = coded => {
    switch (coded.crosses) {
      case 'function':
        return (...given) => call(coded.number, given)
      case 'promise':
        return new Promise((fulfil, reject) => call(coded.number, [fulfil, reject]))
      case 'error':
        return new Error(coded.message)
      case 'list':
        return coded.items.map(decode)
      case 'object':
        return Object.fromEntries(coded.entries.map(([key, inner]) => [key, decode(inner)]))
      default:
        return coded.value
    }
  }
  const call = (number, given) => {
    let answer
    const listen = event => {
      answer = event.detail
    }
    document.addEventListener(`${own}-answer`, listen, { once: true })
    document.dispatchEvent(new CustomEvent(other, { detail: { number, given: given.map(encode) } }))
    document.removeEventListener(`${own}-answer`, listen)
    if (answer.error !== undefined) throw new Error(answer.error)
    return decode(answer.value)
  }
  document.addEventListener(own, event => {
    const { number, given } = event.detail
    let answer
    try {
      answer = { value: encode(functions.get(number)(...given.map(decode))) }
    } catch (thrown) {
      answer = { error: String(thrown?.message ?? thrown) }
    }
    document.dispatchEvent(new CustomEvent(`${other}-answer`, { detail: answer }))
  })

  if (side === 'page') {
    document.addEventListener('expose', event => {
      const { name, api } = event.detail
      Object.defineProperty(globalThis, name, { value: Object.freeze(decode(api)), enumerable: true })
    })
    return
  }

  const waiting = new Map()
  globalThis.hearFromMain = ({ id, value, error }) => {
    const { fulfil, reject } = waiting.get(id)
    waiting.delete(id)
    if (error === undefined) fulfil(value)
    else reject(new Error(error))
  }
  const electron = {
    ipcRenderer: {
      invoke: (channel, ...given) =>
        new Promise((fulfil, reject) => {
          const id = waiting.size === 0 ? 1 : Math.max(...waiting.keys()) + 1
          waiting.set(id, { fulfil, reject })
          globalThis.sendToMain(JSON.stringify({ id, channel, given }))
        }),
    },
    contextBridge: {
      exposeInMainWorld: (name, api) =>
        document.dispatchEvent(new CustomEvent('expose', { detail: { name, api: encode(api) } })),
    },
  }
  const require = name => {
    if (name === 'electron') return electron
    throw new Error(`a sandboxed preload script may require electron, not ${name}`)
  }
  const module = { exports: {} }
  preload(require, module, module.exports)
}
