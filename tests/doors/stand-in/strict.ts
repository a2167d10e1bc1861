/** An object whose missing properties throw by name, so that nothing is quietly absent. */
export function strict<T extends object>(name: string, object: T): T {
  return new Proxy(object, {
    get(target, key): unknown {
      const value: unknown = Reflect.get(target, key)
      if (typeof value === 'function') return value.bind(target)
      if (key in target || typeof key === 'symbol' || key === 'then') return value
      throw new Error(`The stand-in has no electron.${name}.${key}`)
    },
  })
}

/** An event that may be prevented, as Electron's are. */
export function preventable() {
  const event = { prevented: false, preventDefault: () => void (event.prevented = true) }
  return event
}
