/**
 * The section Report: the words around the result, and what can be taken away.
 */
import { benchField } from './apparatus.js';
import { messageOf } from './core.js';
import { byId } from './dom.js';
import { Choice } from './field.js';
import { Handout } from './handout.js';
import { copyText, openReport, takeBundle, takeReport, takeTable } from './files.js';
import { LANGUAGES } from './languages.js';
import { Merging } from './merge.js';
import { takePlot } from './plot-files.js';
import { Print } from './print.js';
import { each, say, tell } from './words.js';
import { toast } from './toast.js';

/** @import { Book } from './book.js' */
/** @import { BenchField, View } from './types.js' */
/** @import { TableKind } from './files.js' */
/** @import { PlotFormat, PlotName } from './plot-files.js' */

/** @type {[BenchField, number][]} */
const FIELDS = [['people', 1], ['date', 1], ['place', 1], ['aim', 3], ['method', 5], ['discussion', 5]];

export class Report {
  /** @param {Book} book */
  constructor(book) {
    this.fields = FIELDS.map(([name, lines]) => ({ name, field: benchField(book, name, { prose: true, lines }) }));
    byId('report-fields').append(...this.fields.map(({ field }) => field.root));
    /** @type {TableKind} */
    let kind = 'csv';
    const choice = new Choice({
      id: 'table-format',
      label: say('report-format'),
      options: each(['csv', 'latex', 'markdown'], (key) => say(`report-formats-${key}`)),
    }, (value) => { kind = value; });
    byId('table-format-box').replaceWith(choice.root);
    this.print = new Print(book);
    const { print } = this;
    const languages = new Choice({
      id: 'report-language',
      label: say('report-language'),
      options: LANGUAGES,
    }, (value) => { print.speak(value).catch((error) => toast(messageOf(error))); });
    languages.show(print.language);
    byId('report-language-box').replaceWith(languages.root);
    this.handout = new Handout(book);
    /** @type {PlotName} */
    let plot = 'line';
    /** @type {PlotFormat} */
    let format = 'svg';
    const plots = new Choice({
      id: 'plot-name',
      label: say('report-plot'),
      options: { line: say('line-plot'), residuals: say('line-residuals'), bench: say('apparatus-drawing'), budget: say('uncertainty-title'),
        trials: say('trials-plot'), traces: say('traces-view'), walk: say('traces-walk') },
    }, (value) => { plot = value; });
    const formats = new Choice({ id: 'plot-format', label: say('report-plot-format'), options: { svg: 'SVG', png: 'PNG' } },
      (value) => { format = value; });
    byId('plot-boxes').append(plots.root, formats.root);
    this.merging = new Merging(book);
    byId('take-bundle').parentElement?.after(this.merging.root);
    onPress('take-plot', () => takePlot(book, plot, format));
    onPress('open-report', () => openReport(book, print.language));
    onPress('take-latex', () => takeReport(book, 'latex', print.language));
    onPress('take-markdown', () => takeReport(book, 'markdown', print.language));
    onPress('take-bundle', () => takeBundle(book));
    onPress('copy-table', () => copyText(book.desk.table(kind, tell)));
    onPress('take-table', () => takeTable(book, kind));
  }

  /** @param {View} view */
  show(view) {
    for (const { name, field } of this.fields) field.show(view.bench[name]);
    this.handout.show(view);
    this.merging.show();
    this.print.show(view);
  }
}

/**
 * @param {string} id
 * @param {() => void | Promise<void>} work
 */
function onPress(id, work) {
  byId(id).addEventListener('click', async () => {
    try {
      await work();
    } catch (error) {
      toast(messageOf(error));
    }
  });
}
