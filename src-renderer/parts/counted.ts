const whole = new Intl.NumberFormat('en-GB')

/** So many of something, in words: '1 row', '1,204 rows'. */
export function counted(many: number, [one, several]: readonly [one: string, many: string]): string {
  return `${whole.format(many)} ${many === 1 ? one : several}`
}
