import { randomBytes } from 'node:crypto';

/**
 * A UUID of version 7 (RFC 9562, 5.7): 48 bits of Unix time in milliseconds, the rest random, so that ids sort by age.
 * Prisma makes the same kind by itself; this one is for rows written in bulk, whose ids must be known beforehand.
 */
export function newId(now: number = Date.now()): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(now, 0, 6);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x70, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
