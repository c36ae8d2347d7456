/**
 * The leaves of the open notebook: on the left page the work, on the right page what follows from it. Turned by the
 * outline, by keys, by address, and by whatever leads to a place on another leaf.
 *
 * The HTML says what stands where: `data-leaf` names a leaf's left page, `data-on` the leaves beside which a part of the
 * right page stands. What is turned away is `hidden="until-found"`, so that the browser's own search finds it.
 */
import { setAttribute } from './dom.js';

/** @type {NodeListOf<HTMLElement>} */
const pages = document.querySelectorAll('[data-leaf]');
/** @type {NodeListOf<HTMLElement>} */
const beside = document.querySelectorAll('[data-on]');
const names = [...pages].map((page) => page.dataset.leaf ?? '');

/** How far each leaf was scrolled, and what had the focus there. @type {Map<string, {top: number, focus: Element | null}>} */
const left = new Map();
/** @type {((name: string) => void)[]} */
const watchers = [];
let current = names.find((_, index) => !pages[index]?.hidden) ?? '';
document.body.dataset.at = current;

/** The left pages of all leaves. */
export function leaves() {
  return [...pages];
}

/** The leaves on which something stands. @param {Element} node */
export function leavesOf(node) {
  const page = node.closest('[data-leaf], [data-on]');
  if (!(page instanceof HTMLElement)) return [];
  return (page.dataset.leaf ?? page.dataset.on ?? '').split(' ');
}

/** Whether something stands on the leaf that is turned up. @param {Element} node */
export function isUp(node) {
  return leavesOf(node).includes(current);
}

/** Calls with the name of each leaf that is turned up. @param {(name: string) => void} watcher */
export function watchLeaves(watcher) {
  watchers.push(watcher);
  watcher(current);
}

/** Turns a leaf up, as it was left. @param {string} name */
export function turnTo(name) {
  if (!names.includes(name)) return;
  setOver(false);
  if (name === current) return;
  left.set(current, { top: scrollY, focus: document.activeElement });
  const { activeElement } = document;
  // Leaving a field sends what was typed there.
  if (activeElement instanceof HTMLElement && !leavesOf(activeElement).includes(name) && leavesOf(activeElement).length > 0) {
    activeElement.blur();
  }
  current = name;
  document.body.dataset.at = name;
  for (const page of pages) putAway(page, page.dataset.leaf !== name);
  for (const part of beside) putAway(part, !part.dataset.on?.split(' ').includes(name));
  scrollTo({ top: left.get(name)?.top ?? 0, behavior: 'instant' });
  const place = addressed();
  if (!place || !leavesOf(place).includes(name)) history.replaceState(null, '', `#${name}`);
  for (const watcher of watchers) watcher(name);
}

/** Scrolls to where the page was when it was left, once all is there. */
export function goBack() {
  if (history.state) scrollTo({ top: history.state.top, behavior: 'instant' });
}

/** Turns up the leaf and the page on which something stands, and unfolds what it stands in. @param {Element} node */
export function reveal(node) {
  for (let box = node.parentElement?.closest('details'); box; box = box.parentElement?.closest('details')) box.open = true;
  const on = leavesOf(node);
  const [name] = on.includes(current) ? [current] : on;
  if (name === undefined) return;
  turnTo(name);
  setOver(node.closest('[data-on]') !== null);
}

/** Turns to the leaf `step` further on, and goes on where one was on it. @param {number} step */
function turnBy(step) {
  const name = names[(names.indexOf(current) + step + names.length) % names.length] ?? current;
  history.pushState(null, '', `#${name}`);
  turnTo(name);
  const focus = left.get(name)?.focus;
  const page = pages[names.indexOf(name)];
  const to = focus instanceof HTMLElement && page?.contains(focus) ? focus : page;
  to?.focus({ preventScroll: true });
}

/** @param {HTMLElement} part @param {boolean} away */
function putAway(part, away) {
  setAttribute(part, 'hidden', away ? 'until-found' : undefined);
}

const turnOver = /** @type {HTMLElement} */ (document.getElementById('turn-over'));

/** Where one page at a time is shown: whether it is the right one. @param {boolean} over */
function setOver(over) {
  document.body.classList.toggle('over', over);
  turnOver.setAttribute('aria-expanded', String(over));
}

/** The place that the address names. */
function addressed() {
  return document.getElementById(location.hash.slice(1));
}

/** Follows the address to its place. */
function follow() {
  const place = addressed();
  if (!place) return;
  reveal(place);
  if (!place.matches('[data-leaf], [data-leaf] > section:first-child')) place.scrollIntoView({ block: 'center' });
}

// The browser would do so before there is anything to scroll.
history.scrollRestoration = 'manual';
// Where it does not tell that scrolling has ended, it is asked as the page is left.
addEventListener('onscrollend' in window ? 'scrollend' : 'pagehide', () => history.replaceState({ top: scrollY }, ''));
addEventListener('hashchange', follow);
follow();
turnOver.addEventListener('click', () => setOver(!document.body.classList.contains('over')));
document.addEventListener('beforematch', ({ target }) => {
  if (target instanceof Element) reveal(target);
});
document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest('#outline a') : null;
  const name = link?.getAttribute('href')?.slice(1) ?? '';
  if (!names.includes(name) || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  if (name !== current) history.pushState(null, '', `#${name}`);
  turnTo(name);
});
document.addEventListener('keydown', (event) => {
  const step = { PageDown: 1, PageUp: -1 }[event.key];
  if (step === undefined || !event.altKey || event.ctrlKey || event.metaKey || document.querySelector('dialog[open]')) return;
  event.preventDefault();
  turnBy(step);
});
