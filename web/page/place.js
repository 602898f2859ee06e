// Puts markup in place. Elements that stay are changed, not replaced, so focus,
// scroll, selection and what is being typed survive. What is the same already is
// passed over whole: the browser compares two subtrees far faster than a script can.

const last = new Map();

/** Makes the element with this id hold `html`; nothing is touched when it does already. */
export function put(id, html) {
  if (last.get(id) === html) return;
  last.set(id, html);
  const region = document.getElementById(id);
  const wanted = document.createElement('template');
  wanted.innerHTML = html;
  children(region, wanted.content);
  for (const field of region.querySelectorAll('input, textarea')) {
    if (field.value !== field.defaultValue) field.value = field.defaultValue;
    if (field.checked !== field.defaultChecked) field.checked = field.defaultChecked;
  }
}

/** Forgets what was put, so that the next `put` of every region is carried out. */
export const forget = () => last.clear();

function children(live, wanted) {
  let at = live.firstChild;
  for (let next = wanted.firstChild, after; next; next = after) {
    after = next.nextSibling;
    if (next.id && !alike(at, next)) at = raise(live, at, next);
    if (alike(at, next)) {
      if (next.nodeType !== Node.ELEMENT_NODE) {
        if (at.data !== next.data) at.data = next.data;
      } else if (!at.isEqualNode(next)) {
        element(at, next);
      }
      at = at.nextSibling;
    } else {
      live.insertBefore(next, at);
    }
  }
  while (at) at = drop(at);
}

/**
 * Where the element that `next` describes stands further on, brings it up to `at`; what
 * stood before it goes, unless it is wanted later. What stands at `at` then.
 */
function raise(live, at, next) {
  const found = among(at, next);
  if (!found) return at;
  const stays = found.contains(document.activeElement); // moved, it would lose the focus
  let first = null;
  for (let node = at; node !== found;) {
    if (stays || !node.id || !among(next, node)) {
      node = drop(node);
    } else {
      first ??= node;
      node = node.nextSibling;
    }
  }
  if (first) live.insertBefore(found, first);
  return found;
}

/** The first of `nodes` and its later siblings that is like `node`. */
function among(nodes, node) {
  while (nodes && !alike(nodes, node)) nodes = nodes.nextSibling;
  return nodes;
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
  for (const name of wanted.getAttributeNames()) {
    const value = wanted.getAttribute(name);
    if (live.getAttribute(name) !== value) live.setAttribute(name, value);
  }
  if (live.attributes.length > wanted.attributes.length) {
    // Whether a <details> stands open is the reader's own choice; a dialog is opened from outside.
    const opens = live.nodeName === 'DETAILS' || live.nodeName === 'DIALOG';
    for (const name of live.getAttributeNames()) {
      if (!wanted.hasAttribute(name) && !(opens && name === 'open')) live.removeAttribute(name);
    }
  }
  children(live, wanted);
}
