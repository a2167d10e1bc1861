import { crc32, deflateRawSync } from 'node:zlib'

type Part = { readonly name: string; readonly bytes: Buffer; readonly says?: number }

/** A zip with its parts packed. `says` is what its list of contents claims a part to unpack to, true or not. */
export function packedZip(parts: readonly Part[]): Buffer {
  const pieces: Buffer[] = []
  const central: Buffer[] = []
  let at = 0
  for (const { name, bytes, says } of parts) {
    const packed = deflateRawSync(bytes, { level: 9 })
    const shape = Buffer.alloc(26)
    shape.writeUInt16LE(20, 0)
    shape.writeUInt16LE(8, 4)
    shape.writeUInt16LE(0x21, 8)
    shape.writeUInt32LE(crc32(bytes), 10)
    shape.writeUInt32LE(packed.length, 14)
    shape.writeUInt32LE(says ?? bytes.length, 18)
    shape.writeUInt16LE(Buffer.byteLength(name), 22)
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), shape, Buffer.from(name)])
    const rest = Buffer.alloc(14)
    rest.writeUInt32LE(at, 10)
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), shape, rest, Buffer.from(name)]))
    pieces.push(local, packed)
    at += local.length + packed.length
  }
  const list = Buffer.concat(central)
  const end = Buffer.alloc(22)
  end.write('PK\x05\x06', 'latin1')
  end.writeUInt16LE(parts.length, 8)
  end.writeUInt16LE(parts.length, 10)
  end.writeUInt32LE(list.length, 12)
  end.writeUInt32LE(at, 16)
  return Buffer.concat([...pieces, list, end])
}
