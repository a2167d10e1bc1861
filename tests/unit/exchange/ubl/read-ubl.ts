import { SaxesParser } from 'saxes'

export type Read = {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly text: string
  readonly inside: readonly Read[]
}

type Open = { name: string; attributes: Record<string, string>; text: string; inside: Read[] }

/** A document as a tree of elements by local name; throws where it is not well formed. */
export function readUbl(xml: string): Read {
  const root: Open = { name: '', attributes: {}, text: '', inside: [] }
  const open: Open[] = [root]
  const parser = new SaxesParser()
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ name, attributes }) => {
    const opened: Open = {
      name: name.replace(/^.*:/, ''),
      attributes: { ...attributes },
      text: '',
      inside: [],
    }
    open.at(-1)?.inside.push(opened)
    open.push(opened)
  })
  parser.on('text', (text) => {
    const last = open.at(-1)
    if (last !== undefined) last.text += text
  })
  parser.on('closetag', () => {
    open.pop()
  })
  parser.write(xml).close()
  const [document] = root.inside
  if (document === undefined) throw new Error('The file has no element')
  return document
}

/** Every element down one path of names. */
export function allAt(from: Read, ...path: readonly string[]): readonly Read[] {
  return path.reduce<readonly Read[]>(
    (found, name) => found.flatMap(({ inside }) => inside.filter((one) => one.name === name)),
    [from],
  )
}

/** The text at a path that one element alone has. */
export function textAt(from: Read, ...path: readonly string[]): string {
  const [one, ...more] = allAt(from, ...path)
  if (one === undefined || more.length > 0)
    throw new Error(`${path.join(' / ')} stands ${more.length + 1} times or not at all`)
  return one.text
}
