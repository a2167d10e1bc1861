const everyMs = 50
const mostTries = 60

/** Presses the button of this name on the page, as soon as it is there and can be pressed; gives up after three seconds. */
export function pressWhenThere(name: string, tries = 0): void {
  const buttons = [...document.querySelectorAll<HTMLButtonElement>('#main button')]
  const found = buttons.find((button) => button.textContent?.trim() === name && !button.disabled)
  if (found !== undefined) {
    found.focus()
    found.click()
    return
  }
  if (tries < mostTries) setTimeout(() => pressWhenThere(name, tries + 1), everyMs)
}
