/**
 * The section Apparatus: carriage, source, rails, screen, air, shared errors, and the drawing of the bench. Of a notebook
 * that is opened with its rails in place, one line is shown until more is asked for.
 */
import { BeamChoice } from './beam.js';
import { byId, el, setAttribute, setHidden, setText } from './dom.js';
import { Radios, TextField } from './field.js';
import { counted, NoticeList, ofSection } from './notices.js';
import { Plot } from './plot.js';
import { PlotTable } from './plot-table.js';
import { Rails } from './rails.js';
import { SetUpPhoto } from './set-up-photo.js';
import { Settings } from './settings.js';
import { Shared } from './shared.js';
import { each, inWords, say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { BenchField, RailView, View } from './types.js' */

/** The numbers and words of the bench, by the group they stand in. @type {Record<string, BenchField[]>} */
const GROUPS = {
  source: ['wavelength', 'pulse_rate', 'beam_angle'],
  screen: ['small_divisions', 'screen_width', 'edge_half_width', 'edge_reason', 'time_base_uncertainty'],
  air: ['temperature', 'pressure', 'humidity', 'carbon_dioxide'],
  instruments: ['instruments', 'cables', 'fixed_arm', 'trigger', 'edge_fraction'],
};

/** Those that hold more than a number, with the lines that they show. @type {Partial<Record<BenchField, number>>} */
const LINES = { edge_reason: 2, instruments: 3, cables: 2, fixed_arm: 2, trigger: 2, edge_fraction: 2 };

/** The terms of the glossary that explain them. @type {Partial<Record<BenchField, string>>} */
const TERMS = { edge_half_width: 'standard-uncertainty', time_base_uncertainty: 'relative' };

export class Apparatus {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.box = /** @type {HTMLDetailsElement} */ (byId('apparatus-box'));
    this.line = byId('apparatus-line');
    this.count = byId('apparatus-count');
    /** Whose bench is shown. @type {object | undefined} */
    this.desk = undefined;
    this.notices = new NoticeList(book, byId('apparatus-notices'), ofSection('apparatus'));
    this.path = new Radios({
      name: 'path',
      legend: say('apparatus-path'),
      options: each(['detector', 'mirror'], (key) => say(`apparatus-paths-${key}`)),
    }, (value) => {
      book.edit({ set_path: value });
    });
    byId('apparatus-carriage').append(this.path.root);
    byId('apparatus-air').parentElement?.after(el('details', {}, el('summary', {}, say('apparatus-instruments')),
      el('p', { class: 'hint' }, say('apparatus-instruments-hint')), el('div', { class: 'fields', id: 'apparatus-instruments' })));
    this.photo = new SetUpPhoto(book);
    /** @type {[BenchField, TextField][]} */
    this.fields = Object.entries(GROUPS).flatMap(([group, names]) => names.map((name) => {
      const field = benchField(book, name, { lines: LINES[name], term: TERMS[name] });
      byId(`apparatus-${group}`).append(field.root);
      return /** @type {[BenchField, TextField]} */ ([name, field]);
    }));
    byId('apparatus-instruments').append(this.photo.root);
    this.beam = new BeamChoice(book);
    byId('apparatus-source').append(this.beam.root);
    byId('apparatus-air').append(el('p', { class: 'hint wide' }, say('apparatus-air-hint')));
    this.rails = new Rails(byId('rails'), book);
    this.settings = new Settings(byId('settings'), book);
    this.shared = new Shared(byId('shared'), book);
    const canvas = /** @type {HTMLCanvasElement} */ (byId('bench-plot'));
    this.plot = new Plot(canvas, (canvas, paper, pixels) => {
      book.desk.draw_bench(canvas, paper, pixels, tell);
    }, (width) => book.desk.bench_height(width, tell));
    this.figure = byId('bench-figure');
    this.summary = byId('bench-summary');
    this.table = new PlotTable(canvas, () => book.desk.bench_table());
    this.figure.append(this.table.root);
  }

  /** @param {View} view */
  show(view) {
    this.notices.show(view);
    this.path.show(view.path);
    for (const [name, field] of this.fields) field.show(view.bench[name]);
    this.photo.show(view);
    this.beam.show(view);
    this.rails.show(view);
    this.settings.show(view);
    this.shared.show(view);
    setHidden(this.figure, view.rails.length === 0);
    this.plot.show();
    setText(this.summary, inWords(sentences(view)));
    this.table.show();
    this.showLine(view);
  }

  /** @param {View} view */
  showLine({ path, rails, notices }) {
    const names = rails.map(railName);
    setText(this.line, names.length > 0
      ? say(`apparatus-lines-${path}`, { n: names.length, rails: { all: names } }) : say('apparatus-blank'));
    const inside = notices.filter(({ section, rail }) => section === 'apparatus' && rails.some(({ id }) => id === rail));
    setHidden(this.count, inside.length === 0);
    setText(this.count, counted(inside));
    setAttribute(this.count, 'title', say('strip-notices', { n: inside.length }));
    // Nothing folds under the hands: only what was there when the notebook was opened.
    if (this.desk !== this.book.desk) this.box.open = names.length === 0 || rails.some(({ stands }) => stands === null);
    this.desk = this.book.desk;
  }
}

/**
 * A field of the bench, the budget or the report.
 * @param {Book} book
 * @param {BenchField} name
 * @param {{prose?: boolean, lines?: number, label?: string, term?: string}} [about]
 */
export function benchField(book, name, about = {}) {
  return new TextField({ id: `bench-${name}`, label: say(`fields-${name}`), ...about }, (text) => {
    book.edit({ set_bench: { field: name, text } });
  }, book.setKind);
}

/** @param {View} view */
function sentences({ rails }) {
  return rails.map((rail, index) => say('bench-rail', {
    name: railName(rail, index),
    stands: rail.stands ?? say('bench-position-unknown'),
    rows: rail.rows,
  }));
}

/** What a rail is called: its name, or its number while it has none. @param {RailView} rail @param {number} index */
export function railName(rail, index) {
  return rail.fields.name.text || say('rails-numbered', { n: index + 1 });
}
