// Pictures of the screen as PNG: each pixel a square, lit ones the screen's pale blue.
import { crc32, deflateSync, inflateSync } from 'node:zlib';

const [DOT, GAP, EDGE] = [4, 1, 12];
const [GROUND, UNLIT, LIT] = [0, 1, 2];
const PALETTE = Buffer.from([0x0b, 0x0d, 0x12, 0x10, 0x13, 0x1a, 0xbf, 0xe4, 0xff]);
const WIDE = 128 * DOT + 2 * EDGE;
const HIGH = 64 * DOT + 2 * EDGE;

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(checksum(body));
  return Buffer.concat([length, body, sum]);
}

/** The format's own check sum; newer Nodes bring it. */
function checksum(bytes) {
  if (crc32 !== undefined) return crc32(bytes);
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return (sum ^ 0xffffffff) >>> 0;
}

/** Rows of palette entries, each behind its filter byte. */
function rows(picture) {
  const all = Buffer.alloc((WIDE + 1) * HIGH, GROUND);
  for (let y = 0; y < HIGH; y += 1) {
    for (let x = 0; x < WIDE; x += 1) {
      const [dx, dy] = [x - EDGE, y - EDGE];
      const inside = dx >= 0 && dy >= 0 && dx < 128 * DOT && dy < 64 * DOT;
      const dot = dx % DOT < DOT - GAP && dy % DOT < DOT - GAP;
      if (!inside || !dot) continue;
      const [column, row] = [Math.floor(dx / DOT), Math.floor(dy / DOT)];
      const lit = (picture[(row >> 3) * 128 + column] >> (row & 7)) & 1;
      all[y * (WIDE + 1) + 1 + x] = lit ? LIT : UNLIT;
    }
    all[y * (WIDE + 1)] = 0;
  }
  return all;
}

/** `picture`, 1024 bytes as the screen holds them, as the bytes of a PNG. */
export function png(picture) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(WIDE, 0);
  head.writeUInt32BE(HIGH, 4);
  head.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head), chunk('PLTE', PALETTE),
    chunk('IDAT', deflateSync(rows(picture), { level: 9 })), chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Whether a PNG made here shows `picture`, however it was packed. */
export function isPng(bytes, picture) {
  const at = bytes.indexOf('IDAT');
  const packed = bytes.subarray(at + 4, at + 4 + bytes.readUInt32BE(at - 4));
  return inflateSync(packed).equals(rows(picture));
}
