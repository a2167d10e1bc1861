type Attributes = Readonly<Record<string, string | number>>

/**
 * Text made safe to stand in the picture.
 * @param text anything a person wrote
 * @source XML 1.0, 2.4
 * @example escaped('a < b & "c"') // => "a &lt; b &amp; &quot;c&quot;"
 */
export function escaped(text: string): string {
  // Characters that no XML document may hold are left out.
  const allowed = Array.from(text.toWellFormed()).filter((sign) => sign >= ' ' || sign === '\t')
  return allowed
    .join('')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
}

/**
 * One element of the picture.
 * @param name rect, line, path, circle or text
 * @param attributes numbers are written with at most two decimals
 * @param content text inside, not yet escaped
 * @source SVG 1.1
 * @example element('line', { x1: 0, y1: 1.239 }) // => "<line x1=\"0\" y1=\"1.24\"/>"
 */
export function element(name: string, attributes: Attributes, content?: string): string {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === 'number' ? short(value) : escaped(value)}"`,
  )
  return content === undefined
    ? `<${name}${written.join('')}/>`
    : `<${name}${written.join('')}>${escaped(content)}</${name}>`
}

/**
 * Elements held together in one.
 * @param name svg or g
 * @param attributes numbers are written with at most two decimals
 * @param inside elements, already written
 * @source SVG 1.1
 * @example holding('g', { class: 'zone' }, ['<path/>']) // => "<g class=\"zone\"><path/></g>"
 */
export function holding(name: string, attributes: Attributes, inside: readonly string[]): string {
  return element(name, attributes).replace(/\/>$/, `>${inside.join('')}</${name}>`)
}

/**
 * A number with at most two decimals.
 * @param value finite
 * @source practice, no published source
 * @example short(-0.001) // => "0"
 */
export function short(value: number): string {
  const rounded = Math.round(value * 100) / 100
  return String(rounded === 0 ? 0 : rounded)
}
