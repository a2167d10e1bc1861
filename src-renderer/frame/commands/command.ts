export const commandGroups = ['do', 'go', 'job', 'room', 'swap'] as const
export type CommandGroup = (typeof commandGroups)[number]

/** Something that can be gone to or done by its name. */
export type Command = {
  readonly id: string
  readonly group: CommandGroup
  readonly name: string
  /** Where it is or whose; searched as well. */
  readonly says?: string
  readonly keys?: string
  readonly run: () => void
}

const plainWords = (text: string) => text.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean)

/** The commands that hold every word, in any order; those whose name begins with the first word come first. */
export function matchingCommands(commands: readonly Command[], text: string): readonly Command[] {
  const wanted = plainWords(text)
  const [first] = wanted
  if (first === undefined) return commands
  const has = (command: Command) => {
    const all = `${command.name} ${command.says ?? ''}`.toLocaleLowerCase('en-GB')
    return wanted.every((word) => all.includes(word))
  }
  const late = (command: Command) => (plainWords(command.name).some((word) => word.startsWith(first)) ? 0 : 1)
  return commands.filter(has).toSorted((a, b) => late(a) - late(b))
}

/** The same commands, put together group by group, in the order in which they are shown. */
export function inGroups(
  commands: readonly Command[],
): readonly { readonly group: CommandGroup; readonly commands: readonly Command[] }[] {
  return commandGroups
    .map((group) => ({ group, commands: commands.filter((command) => command.group === group) }))
    .filter((one) => one.commands.length > 0)
}
