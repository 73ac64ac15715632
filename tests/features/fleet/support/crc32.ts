/** Compression method numbers of the ZIP format. */
export const constants = { deflate: 8 } as const;

/** CRC-32 as ZIP uses it (polynomial EDB88320, reflected). */
export function crc32Of(data: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of data) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
