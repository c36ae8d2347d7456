/**
 * From keystrokes to edits. A text is sent when its field is left, on Enter, or a moment after the last
 * keystroke, whichever comes first: the plots follow the typing, and the log holds no entry for each letter.
 */

/** How long a pause in typing sends the text, in ms. */
const PAUSE = 250;

/** @typedef {HTMLInputElement | HTMLTextAreaElement} TextBox */
/** @typedef {(box: TextBox, text: string) => void} Send */

/**
 * Boxes whose text is not sent yet.
 * @type {Map<TextBox, {timer: number, send: Send}>}
 */
const waiting = new Map();

/** @type {EventTarget | null} */
let typedIn = null;

document.addEventListener('focusin', (event) => {
  if (event.target !== typedIn) typedIn = null;
});

/**
 * Listens to all text boxes in `root`.
 * @param {HTMLElement} root
 * @param {Send} send
 */
export function listen(root, send) {
  root.addEventListener('input', (event) => {
    const box = textBox(event.target);
    if (!box) return;
    typedIn = box;
    const old = waiting.get(box);
    if (old) clearTimeout(old.timer);
    waiting.set(box, { timer: window.setTimeout(() => flush(box), PAUSE), send });
  });
  for (const kind of ['change', 'focusout']) {
    root.addEventListener(kind, (event) => {
      const box = textBox(event.target);
      if (box) flush(box);
    });
  }
}

/**
 * Sends the text of a box now, if it waits.
 * @param {TextBox} box
 */
export function flush(box) {
  const entry = waiting.get(box);
  if (!entry) return;
  clearTimeout(entry.timer);
  waiting.delete(box);
  entry.send(box, box.value);
}

/** Sends every text that waits. */
export function flushAll() {
  for (const box of [...waiting.keys()]) flush(box);
}

/**
 * Shows a text in a box, unless the person is ahead of it.
 * @param {TextBox} box
 * @param {string} text
 */
export function put(box, text) {
  if (!waiting.has(box) && box.value !== text) box.value = text;
}

/** Whether the focused text was typed in since it got the focus: its own undo then comes first. */
export function isTyping() {
  return typedIn !== null && document.activeElement === typedIn;
}

/** Says that the focused text is done with; what comes next is a new one. */
export function doneTyping() {
  typedIn = null;
}

/**
 * @param {EventTarget | null} target
 * @returns {TextBox | undefined}
 */
export function textBox(target) {
  if (target instanceof HTMLTextAreaElement) return target;
  if (target instanceof HTMLInputElement && target.type === 'text') return target;
  return undefined;
}
