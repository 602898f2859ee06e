// Puts markup in place. Elements that stay are changed, not replaced, so focus,
// scroll, selection and what is being typed survive.

const last = new Map();

/** Makes the element with this id hold `html`; nothing is touched when it does already. */
export function put(id, html) {
  if (last.get(id) === html) return;
  last.set(id, html);
  const region = document.getElementById(id);
  const wanted = document.createElement('template');
  wanted.innerHTML = html;
  children(region, wanted.content);
}

/** Forgets what was put, so that the next `put` of every region is carried out. */
export const forget = () => last.clear();

function children(live, wanted) {
  let at = live.firstChild;
  for (const next of [...wanted.childNodes]) {
    // An element with an id is looked for further on: what stood before it has gone.
    if (next.id && !alike(at, next)) {
      let found = at;
      while (found && !alike(found, next)) found = found.nextSibling;
      while (found && at !== found) at = drop(at);
    }
    if (alike(at, next)) {
      if (next.nodeType === Node.ELEMENT_NODE) element(at, next);
      else if (at.data !== next.data) at.data = next.data;
      at = at.nextSibling;
    } else {
      live.insertBefore(next, at);
    }
  }
  while (at) at = drop(at);
}

function alike(a, b) {
  return a && a.nodeName === b.nodeName && (a.id ?? '') === (b.id ?? '');
}

function drop(node) {
  const next = node.nextSibling;
  node.remove();
  return next;
}

function element(live, wanted) {
  const opens = live.nodeName === 'DETAILS' || live.nodeName === 'DIALOG';
  for (const { name, value } of wanted.attributes) {
    if (live.getAttribute(name) !== value) live.setAttribute(name, value);
  }
  for (const { name } of [...live.attributes]) {
    // Whether a <details> stands open is the reader's own choice; a dialog is opened from outside.
    if (!wanted.hasAttribute(name) && !(opens && name === 'open')) live.removeAttribute(name);
  }
  // Read first: a text area's value is its text, which may be moved over below.
  const { value, checked } = wanted;
  children(live, wanted);
  if (value !== undefined && live.value !== value) live.value = value;
  if (checked !== undefined && live.checked !== checked) live.checked = checked;
}
