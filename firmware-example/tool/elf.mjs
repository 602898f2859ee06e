// Reads a 32-bit little-endian ELF: what goes to memory, and what takes room there.

/** Loadable pieces with their bytes, at the address where they are stored. */
export function segments(elf) {
  const [table, size, count] = [elf.readUInt32LE(28), elf.readUInt16LE(42), elf.readUInt16LE(44)];
  const found = [];
  for (let k = 0; k < count; k += 1) {
    const at = table + k * size;
    const [type, offset, address, length] = [0, 4, 12, 16].map((field) => elf.readUInt32LE(at + field));
    if (type === 1 && length > 0) {
      found.push({ address, bytes: elf.subarray(offset, offset + length) });
    }
  }
  return found;
}

/** Sections that take room in memory; `stored` when their bytes lie in flash. */
export function sections(elf) {
  const [table, size, count] = [elf.readUInt32LE(32), elf.readUInt16LE(46), elf.readUInt16LE(48)];
  const [ALLOCATED, NO_BITS] = [2, 8];
  const found = [];
  for (let k = 0; k < count; k += 1) {
    const at = table + k * size;
    const [type, flags, address, length] = [4, 8, 12, 20].map((field) => elf.readUInt32LE(at + field));
    if (flags & ALLOCATED) found.push({ address, size: length, stored: type !== NO_BITS });
  }
  return found;
}
