/**
 * The results of a class in order, each as a bar of its expanded uncertainty beside its name, across the band of their mean.
 */
import { resultsDrawing } from './class-drawings.js';
import { whoOf } from './class-table.js';
import { el } from './dom.js';
import { saveButtons } from './plot-files.js';
import { say } from './words.js';

/** @import { Member } from './class-table.js' */
/** @import { Bar, Class } from './worker-types.js' */

export class ClassChart {
  /** @param {HTMLElement} list @param {HTMLElement} scale */
  constructor(list, scale) {
    this.list = list;
    this.scale = scale;
    /** What is drawn, with what is told of the class. @type {{all: {name: string, bar: Bar}[], told: Class | undefined}} */
    this.shown = { all: [], told: undefined };
    list.closest('figure')?.append(saveButtons(say('class-plot'), () => 'class-results', () => resultsDrawing(this.shown.all, this.shown.told)));
  }

  /** @param {Member[]} members @param {Class | undefined} told @returns {number} how many are drawn */
  show(members, told) {
    const drawn = members.flatMap((member) => {
      const { bar, result, c } = member.compared ?? {};
      return bar && result ? [{ name: whoOf(member), bar, value: result.c, c: c ?? '' }] : [];
    }).sort((one, other) => one.value - other.value);
    this.shown = { all: drawn, told };
    const mean = told?.mean;
    this.list.replaceChildren(...drawn.map(({ name, bar, c }) => {
      const band = mean ? [stretch(el('i', { class: 'band' }), mean)] : [];
      const place = at(el('i', { class: bar.beyond ? 'place beyond' : 'place' }), bar.at);
      return el('li', {}, el('span', { class: 'name' }, name), el('span', { class: 'unseen' }, ` ${c}`),
        el('span', { class: 'track', title: c, 'aria-hidden': 'true' }, ...band, stretch(el('i', { class: 'bar' }), bar), place));
    }));
    this.scale.replaceChildren(...(told?.ticks ?? []).map((tick) => at(el('span', {}, tick.text), tick.at)));
    return drawn.length;
  }
}

/** @template {HTMLElement} Node @param {Node} node @param {number} percent */
function at(node, percent) {
  node.style.insetInlineStart = `${percent}%`;
  return node;
}

/** @param {HTMLElement} node @param {Bar} bar */
function stretch(node, { from, to }) {
  node.style.inlineSize = `${to - from}%`;
  return at(node, from);
}
