// A moment of an emulated machine, kept and come back to: every object that can be
// reached from a root, with the values it has. Objects stay the same ones, so that
// functions which hold on to them stay right.

/** Large and never written by the machine. */
const LARGE = 4 * 1024 * 1024;

/** The moment of everything reachable from `root`, fields of these names left out. */
export function capture(root, without = ['cold']) {
  const seen = new Map();
  const open = [root];
  const later = (value) => {
    if (value !== null && typeof value === 'object' && !seen.has(value)) open.push(value);
  };
  while (open.length > 0) {
    const one = open.pop();
    if (seen.has(one) || one instanceof DataView || one instanceof ArrayBuffer) continue;
    if (ArrayBuffer.isView(one)) {
      if (one.byteLength < LARGE) seen.set(one, one.slice());
    } else if (one instanceof Set) {
      const values = [...one];
      seen.set(one, values);
      values.forEach(later);
    } else if (one instanceof Map) {
      const entries = [...one];
      seen.set(one, entries);
      entries.forEach(([key, value]) => { later(key); later(value); });
    } else if (Array.isArray(one)) {
      seen.set(one, one.slice());
      one.forEach(later);
    } else {
      const fields = Object.entries(Object.getOwnPropertyDescriptors(one))
        .filter(([name, own]) => 'value' in own && own.writable && !without.includes(name))
        .map(([name, own]) => [name, own.value]);
      seen.set(one, fields);
      fields.forEach(([, value]) => later(value));
    }
  }
  return seen;
}

/** Everything is again as it was at `moment`. */
export function restore(moment) {
  for (const [one, kept] of moment) {
    if (ArrayBuffer.isView(one)) {
      one.set(kept);
    } else if (one instanceof Set) {
      one.clear();
      kept.forEach((value) => one.add(value));
    } else if (one instanceof Map) {
      one.clear();
      kept.forEach(([key, value]) => one.set(key, value));
    } else if (Array.isArray(one)) {
      one.length = kept.length;
      kept.forEach((value, k) => { one[k] = value; });
    } else {
      for (const [name, value] of kept) one[name] = value;
    }
  }
}
