/**
 * From keystrokes to edits. A text is sent when its field is left, on Enter, a moment after the last keystroke, or a
 * second after the first one that was not sent, whichever comes first: the plots follow the typing, what is typed is
 * soon stored, and the log holds no entry for each letter. What is sent of one text while one is at it is one flow.
 */

/** How long a pause in typing sends the text, in ms. */
const PAUSE = 250;
/** How long a text waits at most, in ms. */
const LONGEST = 1_000;
/** How many times a flow is sent before the next one begins, so that one undo does not take back pages of prose. */
const MOST = 20;

/** @typedef {HTMLInputElement | HTMLTextAreaElement} TextBox */
/** @typedef {(box: TextBox, text: string) => void} Send */

/**
 * Boxes whose text is not sent yet, and the time by which it must be.
 * @type {Map<TextBox, {timer: number, due: number, send: Send}>}
 */
const waiting = new Map();

/** @type {(() => void)[]} */
const watchers = [];

/** @type {EventTarget | null} */
let typedIn = null;

/** The flow in hand, how many times it was sent, and whether it is being sent. */
let flow = { number: 0, sent: 0, sending: false };

document.addEventListener('focusin', (event) => {
  if (event.target !== typedIn) doneTyping();
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
    clearTimeout(old?.timer);
    const now = performance.now();
    const due = old?.due ?? now + LONGEST;
    waiting.set(box, { timer: window.setTimeout(() => flush(box), Math.min(PAUSE, due - now)), due, send });
    if (!old) tellWatchers();
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
  if (flow.sent === MOST || box !== typedIn) newFlow();
  flow.sent += 1;
  flow.sending = true;
  try {
    entry.send(box, box.value);
  } finally {
    flow.sending = false;
    tellWatchers();
  }
}

/** Sends every text that waits. */
export function flushAll() {
  for (const box of [...waiting.keys()]) flush(box);
}

/** Whether a text waits to be sent. */
export function isWaiting() {
  return waiting.size > 0;
}

/**
 * Calls when texts begin to wait, and when one was sent.
 * @param {() => void} watcher
 */
export function watchWaiting(watcher) {
  watchers.push(watcher);
}

function tellWatchers() {
  for (const watcher of watchers) watcher();
}

/** The number of the flow that is being sent right now; nothing if an edit does not come from typing. */
export function flowInHand() {
  return flow.sending ? flow.number : undefined;
}

function newFlow() {
  flow = { number: flow.number + 1, sent: 0, sending: false };
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
  newFlow();
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
