// image.mjs PROGRAM UF2: writes what a 32-bit ELF puts into flash as a UF2, the
// form that the board's boot ROM takes when it is dragged there, and says what
// the program takes of flash and of static RAM. Fails beyond the limits.
import { readFileSync, writeFileSync } from 'node:fs';
import { segments, sections } from './elf.mjs';

const MOST_FLASH = 64_000;
const MOST_RAM = 8_000;
const [FAMILY, PAGE, FLASH] = [0xe48bff56, 256, 0x10000000];

/** The flash's pages that the program fills, by address; what it leaves free is ones. */
function pages(program) {
  const found = new Map();
  for (const { address, bytes } of segments(program)) {
    bytes.forEach((byte, k) => {
      const base = (address + k) - (address + k) % PAGE;
      if (!found.has(base)) found.set(base, Buffer.alloc(PAGE, 0xff));
      found.get(base)[address + k - base] = byte;
    });
  }
  return [...found].sort(([a], [b]) => a - b);
}

/** Source: the format's own description, "USB Flashing Format (UF2)". */
function uf2(program) {
  const all = pages(program);
  return Buffer.concat(all.map(([address, bytes], number) => {
    const block = Buffer.alloc(512);
    const words = [0x0a324655, 0x9e5d5157, 0x2000, address, PAGE, number, all.length, FAMILY];
    words.forEach((word, k) => block.writeUInt32LE(word, 4 * k));
    bytes.copy(block, 32);
    block.writeUInt32LE(0x0ab16f30, 508);
    return block;
  }));
}

const [from, to] = process.argv.slice(2);
const program = readFileSync(from);
let flash = 0;
let ram = 0;
for (const { address, size, stored } of sections(program)) {
  if (address >= 0x20000000) ram += size;
  if (stored) flash += size;
}
if (flash === 0) throw new Error('no section of this program goes to flash');
if (segments(program).some(({ address }) => address < FLASH)) throw new Error('not for flash');
writeFileSync(to, uf2(program));
console.log(`flash ${flash} of ${MOST_FLASH} bytes, RAM ${ram} of ${MOST_RAM} bytes without the stack`);
if (flash > MOST_FLASH || ram > MOST_RAM) throw new Error('too large for its limits');
