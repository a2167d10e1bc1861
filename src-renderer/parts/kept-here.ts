/**
 * A choice that this machine remembers. It is written twice: a browser's own store belongs to one port, and the program in a
 * browser has another port at every start; the desktop window has no cookies.
 */
export function keepHere(name: string, value: string): void {
  document.cookie = `tailpiece-${name}=${encodeURIComponent(value)}; max-age=31536000; path=/; samesite=strict`
  window.localStorage.setItem(`tailpiece-${name}`, value)
}

/** What was kept under this name; null when nothing was. */
export function keptHere(name: string): string | null {
  return cookieIn(document.cookie, `tailpiece-${name}`) ?? window.localStorage.getItem(`tailpiece-${name}`)
}

/** One cookie's value out of the page's line of them. */
export function cookieIn(cookies: string, name: string): string | null {
  const found = cookies
    .split(';')
    .map((cookie) => cookie.trim())
    .find((cookie) => cookie.startsWith(`${name}=`))
  return found === undefined ? null : decodeURIComponent(found.slice(name.length + 1))
}
