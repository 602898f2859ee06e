// Keeps the screen on while a Run is open, where the browser can.

let lock = null;
let wanted = false;

/** Asks for the screen to stay on, or lets it go; `tell` hears what came of it. */
export async function awake(on, tell) {
  wanted = on === 'on';
  if (!wanted) {
    await lock?.release();
    return;
  }
  if (lock && !lock.released) return;
  try {
    lock = await navigator.wakeLock.request('screen');
    lock.addEventListener('release', () => tell('screen', 'off'));
    if (wanted) tell('screen', 'on');
    else await lock.release();
  } catch {
    tell('screen', 'off');
  }
}
