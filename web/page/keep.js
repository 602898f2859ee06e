// What stays on this device: Runs, and what the page remembers, in IndexedDB.
// A Run is a frozen record and one record for every event, under [run, number].
// An event counts as kept when its transaction (durability: strict) has completed
// AND what is read back is what was written. Whoever writes to a Run has first put
// its own mark on it, so a tab that lost it can't add to it even before it knows.

const NAME = 'handturn-1'; // product and schema version; every page on a disk shares one origin
// What the Shop holds: every tab has the same, whichever typed it.
const SHARED = /^(last-)?(own|head)-|^shop-(heads|chosen)$/;
const MOST = 8e6; // characters of one stored Run that are looked at
const SLOW_MS = 3000;
// Right after a browser was killed its store may not open for a moment.
const PAUSES_MS = [100, 300, 800, 1800];
const FOR_GOOD = ['SecurityError', 'VersionError'];
const HEADS = /^(last-)?head-|^shop-/;
const aside = () => IDBKeyRange.bound('unread ', 'unread \uffff');

const me = [...crypto.getRandomValues(new Uint32Array(4))].join('-');
const others = 'BroadcastChannel' in globalThis ? new BroadcastChannel(NAME) : null;
const shops = 'BroadcastChannel' in globalThis ? new BroadcastChannel(`${NAME} page`) : null;
/** Runs this tab counts on, or is about to, each with what lets go of it. */
const held = new Map();
let tell = () => {};
let base = null;
/** The store has been read once. */
let read = false;
/** It was told that the store does not take all. */
let failing = false;

const completed = (work) => new Promise((resolve, reject) => {
  work.oncomplete = () => resolve();
  work.onabort = () => reject(work.left ? new Error('left') : work.refused ? new Error(work.refused) : work.error ?? new Error('aborted'));
});
const result = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
const every = (run) => IDBKeyRange.bound([run], [run, []]);
const reason = (fault) => (fault?.name === 'QuotaExceededError' ? 'full' : fault?.message || fault?.name || 'unknown');
const reading = (...stores) => base.transaction(stores, 'readonly');
const writing = (...stores) => base.transaction(stores, 'readwrite', { durability: 'strict' });
const line = (text) => (typeof text === 'string' ? text.replace(/\n/g, ' ') : '');

function refuse(work, why) {
  work.refused = why;
  work.abort();
}

/** Opens the store and gives the events that tell what lies in it, in order. */
export function startKeeping(send) {
  tell = send;
  return open(PAUSES_MS);
}

async function open([pause, ...later]) {
  try {
    return await found();
  } catch (fault) {
    base?.close();
    base = null;
    if (!pause || FOR_GOOD.includes(fault?.name)) return [['storage', 'refused', reason(fault)]];
    await new Promise((resolve) => { setTimeout(resolve, pause); });
    return open(later);
  }
}

async function found() {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => ['runs', 'events', 'page'].forEach((store) => request.result.createObjectStore(store));
  const opened = await result(request);
  base = opened;
  base.onversionchange = base.onclose = () => {
    opened.close();
    base = null;
    refused('closed');
  };
  const work = reading('runs', 'page');
  const [page, unread, runs] = await Promise.all([
    result(work.objectStore('page').get('page')), result(work.objectStore('page').count(aside())),
    result(work.objectStore('runs').getAllKeys()),
  ]);
  const events = [['storage', 'ready']];
  const fields = fieldsOf(page);
  if (page !== undefined && !fields) {
    await setAside(page);
    events.push(['unread', 'now']);
  } else if (unread) {
    events.push(['unread']);
  }
  for (const run of runs) events.push(['stored', String(run), await stored(reading('runs', 'events'), run)]);
  // What was typed before it could be read goes with it: nothing is waited for from here on.
  there = fields ?? new Map();
  const all = typed === null ? there : joined(there, fieldsOf(typed));
  if (!read) known = there;
  read = true;
  failing = false;
  if (fields || typed !== null) events.splice(1, 0, ['stored-page', '', JSON.stringify([...all])]);
  if (typed !== null) keepPage(JSON.stringify([...all]));
  return events;
}

/** The person asks for another try: at opening the store, or at writing what it did not take. */
async function again() {
  failing = true; // so that it is told when it works
  if (base) keepPage(typed ?? JSON.stringify([...known]));
  else for (const event of await open([])) tell(...event);
}

function refused(why) {
  failing = true;
  tell('storage', 'refused', why);
}

/** A Run as lines of text: number of events, frozen record, then `number event` in order. */
async function stored(work, run) {
  const events = work.objectStore('events');
  const [head, keys, texts] = await Promise.all([
    result(work.objectStore('runs').get(run)), result(events.getAllKeys(every(run))), result(events.getAll(every(run))),
  ]);
  const text = [line(String(head?.next)), line(head?.frozen), ...texts.map((event, k) => `${line(String(keys[k][1]))} ${line(event)}`)].join('\n');
  return text.length > MOST ? '' : text;
}

if (others) others.onmessage = ({ data: run }) => base && look(run);

/** Writes with `write(transaction)`, then tells whether the event `number` of `run` is kept. */
async function keep(run, number, write, agrees) {
  const late = setTimeout(() => tell('slow', run, number), SLOW_MS);
  try {
    if (!base) throw new Error('closed');
    const work = writing('runs', 'events');
    const finished = completed(work);
    write(work);
    await finished;
    if (!(await agrees(reading('runs', 'events')))) throw new Error('differs');
    tell('kept', run, `${number} ${new Date().toTimeString().slice(0, 8)}`);
    others?.postMessage(run);
  } catch (fault) {
    if (fault.message === 'taken') release(run);
    tell('unkept', run, `${number} ${reason(fault)}`);
  } finally {
    clearTimeout(late);
  }
}

/** A new Run with the events it has already, from the lines that `stored` gives. */
const begin = (run, lines) => keep(run, 'begun', (work) => fill(work, run, lines), holds(run, lines));

const holds = (run, lines) => async (work) => (await stored(work, run)) === lines;

function fill(work, run, lines) {
  const [next, frozen, ...rows] = lines.split('\n');
  work.objectStore('runs').add({ frozen, next: Number(next), owner: me }, run);
  rows.forEach((row, k) => work.objectStore('events').add(row.slice(row.indexOf(' ') + 1), [run, k]));
}

/** `run`, which has `number` events, begun anew from `lines`: all of it, or it stays as it is. */
const renew = (run, number, lines) => keep(run, 'begun', (work) => {
  const runs = work.objectStore('runs');
  runs.get(run).onsuccess = ({ target: { result: head } }) => {
    const wrong = unfit(head, Number(number));
    if (wrong) return refuse(work, wrong);
    runs.delete(run);
    work.objectStore('events').delete(every(run));
    fill(work, run, lines);
  };
}, holds(run, lines));

/** Why this tab may not write event `at` of the Run with this head; nothing when it may. */
const unfit = (head, at) => (!head ? 'gone' : head.owner !== me ? 'taken' : head.next !== at ? 'behind' : '');

/** Event `number` of `run`. */
function append(run, number, text) {
  const at = Number(number);
  return keep(run, number, (work) => {
    const runs = work.objectStore('runs');
    runs.get(run).onsuccess = ({ target: { result: head } }) => {
      const wrong = unfit(head, at);
      if (wrong) return refuse(work, wrong);
      try {
        work.objectStore('events').add(text, [run, at]);
        runs.put({ ...head, next: at + 1 }, run);
      } catch (fault) {
        refuse(work, reason(fault));
      }
    };
  }, async (work) => {
    const [head, event] = await Promise.all([
      result(work.objectStore('runs').get(run)), result(work.objectStore('events').get([run, at])),
    ]);
    return event === text && head.next > at;
  });
}

/** What was dropped last, so that it can be put back. */
let dropped = null;

async function drop(run) {
  const lines = base && await stored(reading('runs', 'events'), run).catch(() => null);
  if (lines) dropped = { run, lines };
  return keep(run, 'dropped', (work) => {
    work.objectStore('runs').delete(run);
    work.objectStore('events').delete(every(run));
  }, async (work) => (await result(work.objectStore('runs').count(run))) === 0);
}

function undrop(run) {
  return dropped?.run === run && begin(run, dropped.lines).then(() => look(run));
}

/** Tells what the store has of `run` now. */
async function look(run) {
  try {
    const there = await result(reading('runs').objectStore('runs').count(run));
    if (there) tell('stored', run, await stored(reading('runs', 'events'), run));
    else tell('gone', run);
  } catch (fault) {
    refused(reason(fault));
  }
}

/** Asks to be the one tab that counts on `run`; `steal` takes it from another. */
async function claim(run, how) {
  if (held.has(run)) return;
  let free;
  const released = new Promise((resolve) => { free = resolve; });
  held.set(run, free);
  const mine = () => held.get(run) === free;
  const hold = async (lock) => {
    if (!lock) {
      release(run);
      tell('lock', run, 'elsewhere');
      return;
    }
    try {
      const work = writing('runs', 'events');
      const finished = completed(work);
      const runs = work.objectStore('runs');
      runs.get(run).onsuccess = ({ target: { result: head } }) => {
        if (!head || !mine()) refuse(work, 'gone');
        else runs.put({ ...head, owner: me }, run);
      };
      await finished;
      const lines = await stored(reading('runs', 'events'), run);
      if (!mine()) return;
      tell('stored', run, lines);
      tell('lock', run, 'held');
    } catch (fault) {
      if (!mine()) return;
      release(run);
      tell('lock', run, `failed ${reason(fault)}`);
    }
    await released;
  };
  if (!navigator.locks) return hold(true); // the mark in the record alone keeps two tabs apart
  const settings = how === 'steal' ? { steal: true } : { ifAvailable: true };
  await navigator.locks.request(`${NAME} ${run}`, settings, hold).catch(() => {
    if (!mine()) return;
    release(run);
    tell('lock', run, 'lost');
  });
}

function release(run) {
  held.get(run)?.();
  held.delete(run);
}

/** What the page remembers of its fields; the newest text wins, one write at a time. */
let typed = null;
let wanted = null;
let written = null;
/** Fields by name, as this tab last had them stored, and as the store has them. */
let known = new Map();
let there = new Map();
/** The write under way. */
let work = null;

/** Fields by name in what was stored; null where it is something else. */
function fieldsOf(text) {
  try {
    const rows = JSON.parse(text);
    return rows.every((row) => row.length === 2 && row.every((part) => typeof part === 'string')) ? new Map(rows) : null;
  } catch {
    return null;
  }
}

/** What can't be read is not overwritten. */
async function setAside(page) {
  const work = base.transaction('page', 'readwrite');
  const finished = completed(work);
  work.objectStore('page').put(page, `unread ${Date.now()}`);
  work.objectStore('page').delete('page');
  await finished;
}

/** Hands over, as one file of this name, all that was set aside. */
async function unread(name) {
  try {
    const store = reading('page').objectStore('page');
    const [keys, texts] = await Promise.all([result(store.getAllKeys(aside())), result(store.getAll(aside()))]);
    file(name, JSON.stringify(keys.map((key, k) => [key, texts[k]]), null, 1));
  } catch (fault) {
    refused(reason(fault));
  }
}

async function keepPage(text) {
  const busy = wanted !== null;
  typed = wanted = text;
  if (busy) return;
  await new Promise((resolve) => { setTimeout(resolve); }); // what was answered is drawn first
  while (base && written !== wanted) await writePage().catch((fault) => { if (fault.message !== 'left') refused(reason(fault)); });
  wanted = null;
  written = null;
}

/** `stored` with what was typed here before it could be read; of the Shop, what is stored stays. */
function joined(stored, now) {
  if (read) return merged(stored, now);
  const heads = [...stored.keys()].some((name) => HEADS.test(name));
  const gives = (name) => SHARED.test(name) && (stored.has(name) || heads && HEADS.test(name));
  return new Map([...stored, ...[...now].filter(([name]) => !gives(name))]);
}

/** `stored` with what this tab has changed since it last wrote. */
function merged(stored, now) {
  const all = new Map(stored);
  for (const [name, value] of now) if (known.get(name) !== value) all.set(name, value);
  for (const name of known.keys()) if (!now.has(name)) all.delete(name);
  return all;
}

async function writePage() {
  written = wanted;
  const now = fieldsOf(written) ?? new Map();
  let all = there;
  const mine = work = base.transaction('page', 'readwrite');
  const finished = completed(work);
  const store = work.objectStore('page');
  store.get('page').onsuccess = ({ target }) => {
    try {
      all = merged(fieldsOf(target.result) ?? new Map(), now);
      store.put(JSON.stringify([...all]), 'page');
    } catch (fault) {
      refuse(mine, reason(fault));
    }
  };
  await finished.finally(() => { if (work === mine) work = null; });
  [known, there] = [now, all];
  shops?.postMessage('');
  if (!failing) return;
  failing = false;
  tell('storage', 'ready');
}

// Another tab has written: this one has its Shop too, and leaves it as it is.
if (shops) shops.onmessage = async () => {
  if (!base) return;
  const text = await result(reading('page').objectStore('page').get('page')).catch(() => null);
  const stored = fieldsOf(text);
  if (!stored) return;
  const shop = (fields) => JSON.stringify([...fields].filter(([name]) => SHARED.test(name)).sort());
  const news = shop(stored) !== shop(known);
  there = stored;
  if (!news) return;
  known = new Map([...[...known].filter(([name]) => !SHARED.test(name)), ...[...stored].filter(([name]) => SHARED.test(name))]);
  tell('stored-page', 'elsewhere', text);
};

// Who leaves right after a key leaves nothing behind: no time is left to look first.
addEventListener('pagehide', () => {
  if (!base || wanted === null) return;
  try {
    // What still waits for its answer would hold this up, and is lost with the page.
    const waits = work;
    work = null;
    const last = base.transaction('page', 'readwrite');
    last.objectStore('page').put(JSON.stringify([...merged(there, fieldsOf(wanted) ?? new Map())]), 'page');
    last.commit();
    if (waits) waits.left = true;
    waits?.abort();
  } catch { /* the store is gone, as was told */ }
});

/** Whether the browser promises not to clear this page's store by itself. */
async function lasting() {
  const yes = await navigator.storage?.persist?.().catch(() => false);
  tell('lasting', yes ? 'yes' : 'no');
}

/** Hands a text over as a file. */
function file(name, text) {
  const link = document.createElement('a');
  const type = name.endsWith('.svg') ? 'image/svg+xml' : 'application/json';
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

/** What the engine may ask of this side: one name each, texts as arguments. */
export const keeping = { begin, append, renew, drop, undrop, look, claim, release, file, lasting, again, unread, 'keep-page': keepPage };
