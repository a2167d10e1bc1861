import { crc32 } from 'node:zlib'

const localMark = 0x04034b50
const centralMark = 0x02014b50
const endMark = 0x06054b50
const version = 20
/** 1 January 1980, the first day that a zip knows. */
const noDay = 0x21

/**
 * A zip of parts laid in as they are. The workbook reader is handed this rather than the supplier's own zip, so that it
 * unpacks exactly the bytes that were counted, whatever else the supplier's zip says of itself.
 * (Layout: the published .ZIP file format specification, sections 4.3.7, 4.3.12 and 4.3.16.)
 */
export function storedZip(parts: ReadonlyMap<string, Buffer>): Buffer {
  const pieces: Buffer[] = []
  const central: Buffer[] = []
  let at = 0
  for (const [name, bytes] of parts) {
    const named = Buffer.from(name, 'utf8')
    const shape = shapeOf(bytes, named.length)
    const local = Buffer.concat([numbers([localMark, 4], [version, 2]), shape, named])
    central.push(centralOf(shape, named, at))
    pieces.push(local, bytes)
    at += local.length + bytes.length
  }
  const list = Buffer.concat(central)
  const end = numbers(
    [endMark, 4],
    [0, 4],
    [parts.size, 2],
    [parts.size, 2],
    [list.length, 4],
    [at, 4],
    [0, 2],
  )
  return Buffer.concat([...pieces, list, end])
}

/** Flags, method (stored), time, day, check sum, both sizes, length of the name, no extra field. */
function shapeOf(bytes: Buffer, nameLength: number): Buffer {
  const { length } = bytes
  return numbers(
    [0, 2],
    [0, 2],
    [0, 2],
    [noDay, 2],
    [crc32(bytes), 4],
    [length, 4],
    [length, 4],
    [nameLength, 2],
    [0, 2],
  )
}

/** No comment, disk 0, no attributes, then where the part lies. */
function centralOf(shape: Buffer, named: Buffer, at: number): Buffer {
  return Buffer.concat([
    numbers([centralMark, 4], [version, 2], [version, 2]),
    shape,
    numbers([0, 2], [0, 2], [0, 2], [0, 4], [at, 4]),
    named,
  ])
}

function numbers(...fields: readonly (readonly [value: number, bytes: number])[]): Buffer {
  const all = Buffer.alloc(fields.reduce((sum, [, bytes]) => sum + bytes, 0))
  let at = 0
  for (const [value, bytes] of fields) at = all.writeUIntLE(value, at, bytes)
  return all
}
