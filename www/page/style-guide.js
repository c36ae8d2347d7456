/**
 * The style guide: the pieces of the page, made by the scripts that make them there, on the demo with a slip or two in it. It
 * comes with the source and is not packed, so that no visit of the notebook loads any of it. Each piece stands below the
 * file that makes it: the guide says no words but the page's own.
 */
import { benchField } from './apparatus.js';
import { Banner } from './banner.js';
import { Book } from './book.js';
import { Budget } from './budget.js';
import { Charts } from './charts.js';
import { begin, core, demoText } from './core.js';
import { el, setAttribute } from './dom.js';
import { Choice, Radios } from './field.js';
import { Figures } from './figures.js';
import { filePicker } from './file-picker.js';
import { keepLanguage } from './language.js';
import { LANGUAGES } from './languages.js';
import { NoticeList, WEIGHTS } from './notices.js';
import { redrawAsWished, redrawPlots } from './plot.js';
import { toast } from './toast.js';
import { each, loadWords, putWords, say } from './words.js';

/** @import { BenchField, Edit } from './types.js' */

/** A text that is no number, and a reading that is far off: so a field and the notices have something to say. @type {Edit[]} */
const SLIPS = [{ set_bench: { field: 'temperature', text: '?' } }, { set_cell: { row: 12, cell: 'edge_b', text: '3' } }];

/** Fields with a unit, a problem, a stand-in, a kind, a link to the glossary, and more than one line. @type {BenchField[]} */
const FIELDS = ['pressure', 'temperature', 'carbon_dioxide', 'edge_half_width', 'coverage', 'edge_reason'];

/** The style that holds the tokens. */
const TOKENS = 'page.css';

/** Pieces below the file that makes them. @param {string} file @param {...(Node | string)} pieces */
function section(file, ...pieces) {
  return el('section', {}, el('h2', {}, el('code', {}, file)), ...pieces);
}

/** What the tokens are, by their names in the style itself: a colour is shown as one, a size and letters on a word. */
function tokens() {
  const sheet = [...document.styleSheets].find(({ href }) => href?.endsWith(TOKENS));
  const root = [...sheet?.cssRules ?? []].find((rule) => rule instanceof CSSStyleRule && rule.selectorText === ':root');
  const style = root instanceof CSSStyleRule ? root.style : undefined;
  const names = [...style ?? []].filter((name) => name.startsWith('--'));
  return el('ul', { class: 'plain' }, ...names.map((name) => {
    const value = style?.getPropertyValue(name).trim() ?? '';
    return el('li', {}, sample(name, value), ' ', el('code', {}, `${name}: ${value}`));
  }));
}

/** @param {string} name @param {string} value */
function sample(name, value) {
  const shown = el('span');
  if (CSS.supports('color', value)) {
    shown.className = 'bar';
    shown.style.background = `var(${name})`;
    shown.style.outline = '1px solid var(--edge)';
  } else if (CSS.supports('font-family', value) && value.includes(',')) {
    shown.textContent = say('app');
    shown.style.fontFamily = `var(${name})`;
  } else if (name.startsWith('--text-')) {
    shown.textContent = say('app');
    shown.style.fontSize = `var(${name})`;
  }
  return shown;
}

function buttons() {
  const button = (/** @type {string} */ text, /** @type {Record<string, string>} */ attributes = {}) => (
    el('button', { type: 'button', ...attributes }, text));
  return el('p', { class: 'actions' }, button(say('tour-start'), { class: 'main' }), button(say('close')),
    button(say('strip-undo'), { class: 'quiet' }), button(say('stop'), { 'aria-disabled': 'true' }),
    el('progress', { max: '1', value: '0.4', 'aria-label': say('trials-progress') }));
}

/** Words in their weights: what leads, what hints, what is set off. */
function words() {
  return [el('p', { class: 'lead' }, say('tour-offer')), el('p', { class: 'hint' }, say('readings-hint')),
    el('p', { class: 'start' }, say('tour-offer')), el('p', { class: 'sealed' }, say('result-sealed'))];
}

/** Choices that work: the theme and the language of the guide itself. */
function choices() {
  const theme = new Radios({
    name: 'theme', legend: say('preferences-theme'),
    options: each(['auto', 'light', 'dark'], (key) => say(`preferences-themes-${key}`)),
  }, (value) => {
    document.documentElement.dataset.theme = value;
    redrawPlots();
  });
  theme.show('auto');
  redrawAsWished();
  const language = new Choice({ id: 'language', label: say('preferences-language'), options: LANGUAGES }, (value) => {
    keepLanguage(value);
    location.reload();
  });
  language.show(say('language'));
  return [theme.root, el('div', { class: 'fields' }, language.root), el('p', { class: 'check' },
    el('input', { type: 'checkbox', id: 'direct', checked: true }), ' ', el('label', { for: 'direct' }, say('readings-direct')))];
}

/** @param {'line' | 'residual'} name @param {string} title */
function plot(name, title) {
  const canvas = el('canvas', { id: `${name}-plot`, role: 'img', 'aria-label': title, 'aria-describedby': `${name}-summary` });
  return el('figure', { id: `${name}-figure` }, el('figcaption', {}, title), el('div', { class: 'plot' }, canvas),
    el('p', { class: 'plot-words', id: `${name}-summary` }));
}

/** A message at the foot, and its button; it can be had again. */
function told() {
  const tell = () => void toast(say('tour-offer'), { label: say('strip-undo'), run: () => {} });
  tell();
  return el('p', { class: 'actions' }, el('button', { type: 'button', click: tell }, say('strip-undo')));
}

/** Puts the pieces on the page, with what each shows of a notebook. @param {Book} book */
function fill(book) {
  const fields = FIELDS.map((name) => ({ name, field: benchField(book, name, { lines: name === 'edge_reason' ? 2 : 1 }) }));
  const figures = new Figures(el('dl', { class: 'figures', id: 'guide-figures' }));
  const notices = el('ul', { class: 'notices' });
  const table = el('table', { id: 'budget-table', role: 'table' });
  document.getElementById('guide')?.append(
    section(TOKENS, tokens(), ...words()),
    section('parts.css', buttons()),
    section('field.js', el('div', { class: 'fields' }, ...fields.map(({ field }) => field.root)), ...choices()),
    section('file-picker.js', el('p', { class: 'actions' }, filePicker(say('pictures-add'), {}, () => {}))),
    section('figures.js', figures.root),
    section('notices.js', notices),
    section('budget.js', el('div', { class: 'budget' }, table)),
    section('charts.js', el('p', { class: 'hint', id: 'charts-nothing' }, say('charts-nothing')),
      plot('line', say('line-plot')), plot('residual', say('line-residuals'))),
    section('toast.js', told()),
  );
  const list = new NoticeList(book, notices, () => true);
  const budget = new Budget(table, book);
  book.add(new Charts(book));
  book.add({ show: (view) => {
    for (const { name, field } of fields) field.show(view.bench[name]);
    figures.show(view.result.figures);
    budget.show(view.budget);
    // One of them in each of the weights.
    list.show({ ...view, notices: view.notices.slice(0, 1).flatMap((notice) => WEIGHTS.map((weight) => ({ ...notice, weight }))) });
  } });
  new Banner({ takeBundle: () => {}, takeOver: () => {}, tryAgain: () => {}, open: () => {} }).show('noJournal', '');
}

async function show() {
  await Promise.all([loadWords().then(putWords), begin()]);
  const book = new Book();
  fill(book);
  const demo = await demoText();
  if (demo) book.put(core.Desk.open(demo));
  for (const slip of SLIPS) book.edit(slip);
  book.judge();
  setAttribute(document.querySelector('#guide-figures details') ?? document.body, 'open', '');
  Object.assign(document.body.dataset, { ready: 'true', complete: 'true' });
}

void show();
