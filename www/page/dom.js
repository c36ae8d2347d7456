/**
 * Building and patching the document. Text reaches it only as text; what is as it should be is not touched,
 * so that focus, selection and screen readers are left in peace.
 */

/**
 * Makes an element. An attribute that is `true` stands bare, one that is `false` is left out, a function
 * listens to the event of that name.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, string | boolean | ((event: any) => void)>} [attributes]
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function el(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') node.addEventListener(name, value);
    else if (value !== false) node.setAttribute(name, value === true ? '' : value);
  }
  node.append(...children);
  return node;
}

/**
 * The element with an id; the page's own HTML holds it.
 * @param {string} id
 * @returns {HTMLElement}
 */
export function byId(id) {
  const node = document.getElementById(id);
  if (!node) throw new Error(`the page has no element "${id}"`);
  return node;
}

/**
 * @param {Node} node
 * @param {string} text
 */
export function setText(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

/**
 * Sets an attribute, or takes it away when the value is `undefined`.
 * @param {Element} node
 * @param {string} name
 * @param {string | undefined} value
 */
export function setAttribute(node, name, value) {
  if (value === undefined) {
    if (node.hasAttribute(name)) node.removeAttribute(name);
  } else if (node.getAttribute(name) !== value) {
    node.setAttribute(name, value);
  }
}

/**
 * Shows a text, and hides its element while the text is empty.
 * @param {HTMLElement} node
 * @param {string} text
 */
export function setOptional(node, text) {
  setText(node, text);
  setHidden(node, text === '');
}

/**
 * @param {HTMLElement} node
 * @param {boolean} hidden
 */
export function setHidden(node, hidden) {
  if (node.hidden !== hidden) node.hidden = hidden;
}

/**
 * Whether two plain values (texts, numbers, lists, records) hold the same.
 * @param {unknown} a
 * @param {unknown} b
 * @returns {boolean}
 */
export function alike(a, b) {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [one, other] = /** @type {Record<string, unknown>[]} */ ([a, b]);
  for (const key in one) if (!alike(one[key], other?.[key])) return false;
  for (const key in other) if (!(key in (one ?? {}))) return false;
  return true;
}

/**
 * A list of like parts, each kept as long as its key is there.
 * @template Item
 * @template {{root: HTMLElement, show(item: Item, index: number): void}} Shown
 */
export class Keyed {
  /**
   * @param {HTMLElement} parent
   * @param {(item: Item) => string} key
   * @param {(item: Item) => Shown} make
   * @param {Element} [after] the child behind which the list begins
   */
  constructor(parent, key, make, after) {
    this.parent = parent;
    this.after = after;
    this.key = key;
    this.make = make;
    /** @type {Map<string, Shown>} */
    this.parts = new Map();
  }

  /** @param {Item[]} items */
  show(items) {
    const old = this.parts;
    this.parts = new Map();
    let next = this.after ? this.after.nextElementSibling : this.parent.firstElementChild;
    items.forEach((item, index) => {
      const key = this.key(item);
      const part = old.get(key) ?? this.make(item);
      old.delete(key);
      this.parts.set(key, part);
      part.show(item, index);
      if (part.root === next) next = next.nextElementSibling;
      else this.parent.insertBefore(part.root, next);
    });
    for (const part of old.values()) part.root.remove();
  }
}

/**
 * Offers bytes or text as a file to keep. A table begins with the mark of UTF-8, without which common spreadsheets take
 * it for the encoding of the machine.
 * @param {BlobPart} content
 * @param {string} type
 * @param {string} name
 */
export function download(content, type, name) {
  const url = URL.createObjectURL(new Blob(type.startsWith('text/csv') ? ['\ufeff', content] : [content], { type }));
  el('a', { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A moment in which a key or a touch is answered, between one part of a longer work and the next. @returns {Promise<void>} */
export function aMoment() {
  return new Promise((done) => { setTimeout(done); });
}
