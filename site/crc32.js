// The CRC-32 that gzip and PNG have, too (ISO 3309): any one change within
// 32 bits shows.

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let i = 0; i < 8; i++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** @param {Uint8Array} data */
export function crc32(data) {
  let sum = 0xffffffff;
  for (let i = 0; i < data.length; i++) sum = TABLE[(sum ^ data[i]) & 255] ^ (sum >>> 8);
  return ~sum >>> 0;
}
