// size.mjs PROGRAM: what a 32-bit ELF takes of flash and of RAM (stack not counted).
import { readFileSync } from 'node:fs';

const elf = readFileSync(process.argv[2]);
const [table, size, count] = [elf.readUInt32LE(32), elf.readUInt16LE(46), elf.readUInt16LE(48)];
const [ALLOC, NOBITS, RAM] = [2, 8, 0x20000000];
let flash = 0;
let ram = 0;
for (let k = 0; k < count; k += 1) {
  const at = table + k * size;
  const [type, flags, address, bytes] = [4, 8, 12, 20].map((field) => elf.readUInt32LE(at + field));
  if (!(flags & ALLOC)) continue;
  if (address >= RAM) ram += bytes;
  if (type !== NOBITS) flash += bytes;
}
if (flash === 0) throw new Error('no section of this program goes to flash');
console.log(`flash ${flash} bytes, RAM ${ram} bytes without the stack`);
