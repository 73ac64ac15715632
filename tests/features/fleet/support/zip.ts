import { deflateRawSync } from 'node:zlib';
import { constants, crc32Of } from './crc32';

export interface ZipPart {
  readonly path: string;
  readonly data: Buffer;
  /** Deflated bytes to store in place of those of `data`, with the size that the archive claims for them. */
  readonly raw?: { readonly deflated: Buffer; readonly size: number };
}

/** A plain ZIP archive (PKWARE application note 4.3): local headers with data, central directory, end record. */
export function zipOf(parts: readonly ZipPart[]): Buffer {
  const local: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const { path, data, raw } of parts) {
    const name = Buffer.from(path);
    const deflated = raw?.deflated ?? deflateRawSync(data);
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt16LE(constants.deflate, 4);
    shared.writeUInt32LE(crc32Of(data), 10);
    shared.writeUInt32LE(deflated.length, 14);
    shared.writeUInt32LE(raw?.size ?? data.length, 18);
    shared.writeUInt16LE(name.length, 22);
    const entry = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), shared, name, deflated]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02', 'latin1'), Buffer.from([20, 0]), shared, tail, name]));
    local.push(entry);
    offset += entry.length;
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(parts.length, 4);
  end.writeUInt16LE(parts.length, 6);
  end.writeUInt32LE(directory.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...local, directory, Buffer.from('PK\x05\x06', 'latin1'), end]);
}
