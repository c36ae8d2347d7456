/**
 * The residuals of all notebooks of a class by position on the bench, and the places at which the class lies off its lines
 * together.
 */
import { drawn, residualsDrawing } from './class-drawings.js';
import { el, setHidden } from './dom.js';
import { Choice } from './field.js';
import { saveButtons } from './plot-files.js';
import { PlotTable } from './plot-table.js';
import { each, say, setTold, tell } from './words.js';

/** @import { Residuals } from './worker-types.js' */

/** @typedef {'normalized' | 'nanoseconds'} Unit */

export class ClassResiduals {
  constructor() {
    /** @type {Unit} */
    this.unit = 'normalized';
    /** @type {Residuals | undefined} */
    this.told = undefined;
    this.units = new Choice({
      id: 'class-residuals-unit',
      label: say('class-residuals-unit'),
      options: each(['normalized', 'nanoseconds'], (key) => say(`class-residuals-units-${/** @type {Unit} */ (key)}`)),
    }, (unit) => {
      this.unit = unit;
      this.draw();
    });
    this.scale = el('span', { class: 'up' });
    this.dots = drawn('path', { class: 'dots' });
    this.bars = drawn('path', { class: 'bars' });
    this.svg = drawn('svg', { viewBox: '0 0 1000 1000', preserveAspectRatio: 'none' }, drawn('path', { d: 'M0 500h1000' }), this.dots, this.bars);
    this.marks = el('span', { class: 'along' });
    this.distances = el('span', { class: 'along' });
    this.rails = el('span', { class: 'along' });
    this.drawn = el('p', { class: 'plot-words', id: 'class-strewn-words' });
    const drawing = el('div', { class: 'strewn', id: 'class-strewn', role: 'img', 'aria-label': say('class-residuals'), 'aria-describedby': 'class-strewn-words' },
      this.marks, this.scale, this.svg, this.distances, this.rails);
    this.table = new PlotTable(drawing, () => this.told?.table);
    this.lead = el('p', { class: 'lead' });
    this.places = el('ol');
    this.rule = el('p', { class: 'hint' }, say('class-places-rule'));
    this.root = el('figure', { id: 'class-residuals', hidden: true },
      el('figcaption', {}, say('class-residuals')),
      this.lead, this.places,
      drawing, this.units.root, this.drawn, saveButtons(say('class-residuals'), () => 'class-residuals', () => this.file()), this.table.root, this.rule);
  }

  /** @param {Residuals | undefined} told */
  show(told) {
    this.told = told;
    setHidden(this.root, !told);
    this.table.show();
    this.draw();
  }

  /** The unit that is shown, and the drawing in it. @param {Residuals} told */
  chosen(told) {
    const unit = told.nanoseconds ? this.unit : 'normalized';
    return { unit, drawing: told[unit] ?? told.normalized };
  }

  /** What is drawn, as a file holds it. */
  file() {
    const { told } = this;
    if (!told) return undefined;
    const { unit, drawing } = this.chosen(told);
    return residualsDrawing(told, drawing, say(`class-residuals-units-${unit}`));
  }

  draw() {
    const { told } = this;
    if (!told) return;
    setHidden(this.units.root, !told.nanoseconds);
    const { unit, drawing } = this.chosen(told);
    this.units.show(unit);
    this.dots.setAttribute('d', drawing.dots);
    this.bars.setAttribute('d', drawing.bars);
    this.scale.replaceChildren(...drawing.ticks.map(({ at, text }) => stand(el('span', {}, text), 'insetBlockStart', at)));
    this.marks.replaceChildren(...told.places.map(({ at }, index) => along(el('b', {}, String(index + 1)), at)));
    this.distances.replaceChildren(...told.ticks.map(({ at, text }) => along(el('span', {}, text), at)));
    this.rails.replaceChildren(...told.rails.map(({ name, from, to }) => {
      const span = along(el('i', {}, name), from);
      span.style.inlineSize = `${to - from}%`;
      return span;
    }));
    setTold(this.drawn, [...told.drawn, ...(drawing.beyond ? [drawing.beyond] : [])]);
    setTold(this.lead, told.told);
    setHidden(this.rule, told.places.length === 0);
    this.places.replaceChildren(...told.places.map(({ text }) => el('li', {}, tell(text))));
  }
}

/** @template {HTMLElement} Node @param {Node} node @param {number} percent */
function along(node, percent) {
  return stand(node, 'insetInlineStart', percent);
}

/** @template {HTMLElement} Node @param {Node} node @param {'insetInlineStart' | 'insetBlockStart'} side @param {number} percent */
function stand(node, side, percent) {
  node.style[side] = `${percent}%`;
  return node;
}
