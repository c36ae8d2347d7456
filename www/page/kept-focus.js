/**
 * The focus is never lost: where what had it is gone, hidden or switched off after a press, it goes to the nearest thing
 * around that can take it, back to where it was before, or to the leaf that is turned up.
 */

/** What can take the focus. */
const TAKES = ['button', 'a[href]', 'input', 'select', 'textarea', 'summary', '[tabindex]'].join();
/** Wider than this the focus is not moved about. */
const WIDEST = ['section', 'aside', 'header', 'dialog', '[data-leaf]'].join();
/** How long after a press what it does may take, ms. */
const WAITS = [50, 400, 1500];
/** How many places it can go back to. */
const MOST = 4;

export class KeptFocus {
  constructor() {
    /** What had the focus, the last first, each with what it stands in. @type {Element[][]} */
    this.trail = [];
    document.addEventListener('focusin', ({ target }) => {
      if (target instanceof Element) this.trail = [[target, ...around(target)], ...this.trail].slice(0, MOST);
    });
    for (const kind of ['click', 'keydown']) {
      document.addEventListener(kind, () => {
        for (const wait of WAITS) setTimeout(() => this.look(), wait);
      });
    }
  }

  look() {
    const last = this.trail[0]?.[0];
    // What is still there was left by a press beside it.
    if (document.activeElement !== document.body || !last || canTake(last)) return;
    const places = this.trail.flat().flatMap((place) => [place, ...place.querySelectorAll(TAKES)]);
    const to = [...places, ...document.querySelectorAll('[data-leaf]')].find(canTake);
    if (to instanceof HTMLElement) to.focus({ preventScroll: true });
  }
}

/** What something stands in, as far as the focus is moved about. @param {Element} node */
function around(node) {
  const all = [];
  for (let box = node.parentElement; box && box !== document.body && !node.matches(WIDEST); box = box.parentElement) {
    if (box.matches('main')) break;
    all.push(box);
    if (box.matches(WIDEST)) break;
  }
  return all;
}

/** @param {Element} node */
function canTake(node) {
  return node.isConnected && node.checkVisibility() && !node.closest('[hidden]') && node.matches(TAKES) && !node.matches(':disabled');
}
