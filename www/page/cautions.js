/**
 * The section Cautions: they stay open until they were read, and as they were left after that.
 */
import { alike, byId, el } from './dom.js';
import { keep, recall } from './preferences.js';
import { tell } from './words.js';

/** @import { CautionGroup, View } from './types.js' */

export class Cautions {
  constructor() {
    this.list = byId('cautions-list');
    /** @type {CautionGroup[]} */
    this.shown = [];
    const box = /** @type {HTMLDetailsElement} */ (byId('cautions-box'));
    box.open = recall('cautions') !== 'read';
    box.addEventListener('toggle', () => keep('cautions', box.open ? 'open' : 'read'));
    byId('cautions-read').addEventListener('click', () => {
      box.open = false;
      box.querySelector('summary')?.focus();
    });
  }

  /** @param {View} view */
  show({ cautions }) {
    if (alike(cautions, this.shown)) return;
    this.shown = cautions;
    this.list.replaceChildren(...cautions.flatMap((group) => [
      el('h3', {}, tell(group.title)),
      el('ul', {}, ...group.cautions.map((caution) => el('li', {}, tell(caution)))),
    ]));
  }
}
