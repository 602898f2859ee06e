// The thin layer between the browser and the engine: an event goes in, the page's
// state with it; the outcome says what to put where. web/src/lib.rs describes the
// seam; nothing here knows the trade.
import { awake } from './awake.js';
import { ready, turn } from './engine.js';
import { keeping, startKeeping } from './keep.js';
import { put, forget } from './place.js';
import { unpack } from './unpack.mjs';
import { offerNewVersion, takeNewVersion } from './version.js';

const EFFECT = '\u001c', FIELD = '\u001d', RECORD = '\u001f';
const KEYS = new Set(['PageDown', 'PageUp', 'ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'Escape', 'Enter']);

const MOST_FILE = 8e6; // bytes of a file that are looked at
const WAIT_MS = 1500; // the page opens without its store rather than later than this

/** All that the page remembers; only the engine reads it. */
let state = '';
/** What happened before the engine was ready, in order; null from then on. */
let early = [];
/** More events follow at once: only what the last one leaves is drawn. */
let more = false;

const effects = {
  state: (text) => { state = text; },
  put: (id, html) => { if (!more) put(id, html); },
  focus: (id) => {
    const at = document.getElementById(id);
    for (let fold = at?.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true;
    at?.focus();
  },
  take: takeNewVersion,
  awake: (on) => awake(on, tell),
  print: () => print(),
  sheet: (id) => {
    const sheet = document.getElementById(id);
    if (sheet && !sheet.open) sheet.showModal();
  },
  ...keeping,
};

/** Hands one event to the engine and carries out what it answers; true when the event was used up. */
function send(kind, name = '', value = '') {
  if (early) {
    early.push([kind, name, value]);
    return false;
  }
  const plain = (text) => String(text).replace(/[\u001c-\u001f]/g, ' ');
  const outcome = turn(state, [kind, name, value, Math.round(Date.now())].map(plain).join(RECORD));
  document.getElementById('fault').hidden = outcome !== null;
  if (outcome === null) { forget(); return false; }
  let used = false;
  for (const effect of outcome.split(EFFECT)) {
    const [verb, ...fields] = effect.split(FIELD);
    if (verb === 'used') used = true;
    else effects[verb]?.(...fields);
  }
  return used;
}

/** Hands one event over once what is being carried out now is done. */
const tell = (...event) => queueMicrotask(() => send(...event));

/** A question whose answer nobody sees: the browser compiles now what the first key will need. */
const rehearse = () => turn(state, ['type', 'parts', '127', Math.round(Date.now())].join(RECORD));

document.addEventListener('input', ({ target }) => {
  if (!target.name) return;
  send('type', target.name, target.type === 'checkbox' ? (target.checked ? 'on' : '') : target.value);
});

document.addEventListener('click', ({ target }) => {
  const pressed = target.closest('[data-do]');
  if (pressed) send('press', pressed.dataset.do, pressed.dataset.value ?? '');
});

document.addEventListener('keydown', (event) => {
  const undo = (event.ctrlKey || event.metaKey) && event.key === 'z';
  if (!undo && (event.ctrlKey || event.metaKey || event.altKey || !KEYS.has(event.key))) return;
  // Where the key was pressed decides whether it is the page's: "field", "button", or nowhere.
  const on = event.target.matches('input, select, textarea') ? 'field'
    : event.target.matches('button, a, summary') ? 'button' : '';
  const key = (event.repeat ? 'held ' : '') + (undo ? 'Undo' : event.key);
  if (send('key', key, on ? `${on} ${event.target.name || event.target.id || ''}` : '')) event.preventDefault();
});

// A dialog closes when the page says so, never by itself.
document.addEventListener('cancel', (event) => {
  event.preventDefault();
  send('key', 'Escape');
}, true);

document.addEventListener('change', async ({ target }) => {
  if (target.type !== 'file' || !target.files[0]) return;
  const [file] = target.files;
  const text = file.size > MOST_FILE ? '' : await file.text();
  target.value = '';
  send('file', file.name, text);
});

// What is printed stands on the page before the browser lays it out.
addEventListener('beforeprint', () => send('print', 'before'));
addEventListener('afterprint', () => send('print', 'after'));

document.addEventListener('submit', (event) => event.preventDefault());
document.addEventListener('visibilitychange', () => send('seen', document.visibilityState));

/** The wasm: carried inside the one-file page, a neighbour of the site's page. */
async function bytes() {
  const carried = document.getElementById('engine');
  if (!carried) return (await fetch('handturn.wasm')).arrayBuffer();
  const packed = Uint8Array.from(atob(carried.textContent), (c) => c.charCodeAt(0));
  return unpack(packed, Number(carried.dataset.size));
}

// The field that stands there from the start may have been typed into before this script ran.
for (const { name, value, defaultValue } of document.querySelectorAll('#page input')) {
  if (value !== defaultValue) send('type', name, value);
}

try {
  const kept = startKeeping(tell);
  await ready(await bytes());
  const late = new Promise((resolve) => { setTimeout(resolve, WAIT_MS, null); });
  const tellAll = (found) => found.forEach((event, k) => {
    more = k < found.length - 1;
    send(...event);
  });
  const wide = matchMedia('(min-width: 35em)');
  const room = () => ['wide', wide.matches ? 'yes' : 'no'];
  wide.addEventListener('change', () => send(...room()));
  const zone = ['zone', String(-new Date().getTimezoneOffset())];
  const found = await Promise.race([kept, late]);
  const happened = early;
  early = null;
  tellAll([...found ?? [], room(), zone, ['open', location.hash.slice(1), document.getElementById('engine') ? 'file' : 'site'], ...happened]);
  if (!found) tellAll(await kept);
  offerNewVersion(() => send('version'));
  (window.requestIdleCallback ?? setTimeout)(rehearse);
} catch (fault) {
  console.error(fault);
  document.getElementById('nostart').hidden = false;
  document.getElementById('ready')?.remove();
}
