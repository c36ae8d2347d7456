/**
 * A partner's notebook, merged into the open one. What it would bring is shown first; where both changed the same, the values
 * stand side by side, and a person chooses. Nothing is taken before that is confirmed, and undo takes all of it back at once.
 */
import { messageOf } from './core.js';
import { byId, el, setHidden, setOptional, setText } from './dom.js';
import { plain, Radios } from './field.js';
import { filePicker } from './file-picker.js';
import { keepFiles, readNotebook } from './files.js';
import { partsOf } from './history.js';
import { flushAll } from './typing.js';
import { each, inWords, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { BesideNotebook } from './files.js' */
/** @import { Clash, Edit, Merge, View } from './types.js' */
/** @import { Desk } from './slope_of_light.js' */
/** What becomes of a clash. @typedef {'ours' | 'theirs' | 'both'} ClashChoice */
/**
 * What is looked at.
 * @typedef {object} Looked
 * @property {Desk} desk the open notebook
 * @property {number} length of its log
 * @property {Merge} merge
 * @property {View} view with what the partner's notebook begins
 * @property {(ClashChoice | undefined)[]} choices one for each clash
 * @property {BesideNotebook} files that came with the partner's notebook
 */

/** How many lines of what is taken are put on the page. */
const MOST = 200;
/** How many clashes are put on the page at once. */
const AT_ONCE = 30;

export class Merging {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** @type {Looked | undefined} */
    this.looked = undefined;
    /** Of the clashes that are on the page. @type {Radios[]} */
    this.drawn = [];
    const picker = filePicker(say('merge-title'), { id: 'merge-file', multiple: false, accept: '.zip,.json,application/zip,application/json' },
      (files) => void this.take(files));
    /** Why the last file was not merged. */
    this.refused = el('p', { class: 'refusal', role: 'status', id: 'merge-refused', hidden: true });
    /** The notebook into which it was not. */
    this.refusedIn = book.desk;
    /** Counts the files that were given, so that one that was read late is told apart. */
    this.turn = 0;
    this.root = el('fieldset', { class: 'bare', role: 'none', 'data-written': true, id: 'merge-place',
      dragover: (/** @type {DragEvent} */ event) => void this.filesOver(event),
      drop: (/** @type {DragEvent} */ event) => {
        if (this.filesOver(event)) void this.take([...event.dataTransfer?.files ?? []]);
      } }, el('p', {}, picker, ' ', el('span', { class: 'hint' }, say('merge-hint'))), this.refused);
    this.from = el('p', { class: 'lead' });
    this.count = el('summary');
    this.taken = el('tbody');
    this.unlisted = el('p', { class: 'hint' });
    this.box = el('details', {}, this.count, el('div', { class: 'scroll', tabindex: '0', role: 'group', 'aria-labelledby': 'merge-title' },
      tableOf(this.taken, say('history-columns-where'), say('history-columns-to'))), this.unlisted);
    this.notes = el('div');
    this.lead = el('p');
    this.clashes = el('div');
    this.more = el('button', { type: 'button', id: 'merge-more', click: () => this.draw(AT_ONCE) }, say('history-more'));
    const all = (/** @type {'ours' | 'theirs'} */ choice) => (
      el('button', { type: 'button', id: `merge-all-${choice}`, click: () => this.chooseRest(choice) }, say(`merge-choices-${choice}`)));
    this.rest = el('p', { class: 'actions', role: 'group', 'aria-labelledby': 'merge-rest' },
      el('span', { id: 'merge-rest' }, say('merge-rest')), all('ours'), all('theirs'));
    this.state = el('p', { class: 'refusal', role: 'status' });
    this.dialog = el('dialog', { class: 'merge', 'aria-labelledby': 'merge-title', close: () => { this.looked = undefined; } },
      el('h2', { id: 'merge-title' }, say('merge-title')), this.from, this.notes, this.box, this.lead, this.rest, this.clashes, this.more,
      el('p', { class: 'hint' }, say('merge-left')), this.state,
      el('p', { class: 'actions' },
        el('button', { type: 'button', class: 'main', id: 'merge-confirm', click: () => void this.confirm() }, say('merge-confirm')),
        el('button', { type: 'button', class: 'quiet', click: () => this.dialog.close() }, say('strike-cancel'))));
    document.body.append(this.dialog);
  }

  /** Why a file was not merged is of no other notebook than the one into which it was not. */
  show() {
    if (this.refusedIn !== this.book.desk) setOptional(this.refused, '');
  }

  /** @param {string} why */
  refuse(why) {
    this.refusedIn = this.book.desk;
    setOptional(this.refused, why);
  }

  /** Whether files are dragged over the place where one is merged; the page itself then has no part in them. @param {DragEvent} event */
  filesOver(event) {
    if (this.book.readOnly || !event.dataTransfer?.types.includes('Files')) return false;
    event.preventDefault();
    event.stopPropagation();
    byId('drop-sign').hidden = true;
    return true;
  }

  /** @param {File[]} files */
  async take(files) {
    const [file] = files;
    setOptional(this.refused, '');
    if (file && files.length > 1) this.refuse(say('merge-one'));
    else if (file) await this.open(file);
  }

  /** Shows what a file would bring. @param {File} file */
  async open(file) {
    this.turn += 1;
    const { turn } = this;
    try {
      const { desk: partner, files } = await readNotebook(file);
      try {
        if (turn !== this.turn) return;
        flushAll();
        const { desk } = this.book;
        const merge = desk.merge(partner);
        const view = withNew(this.book.current(), [...merge.taken, ...merge.clashes.flatMap(({ theirs }) => theirs)]);
        this.looked = { desk, length: desk.length(), merge, view, choices: merge.clashes.map(() => undefined), files };
        this.showMerge(file.name, this.looked);
      } finally {
        partner.free();
      }
    } catch (error) {
      if (turn !== this.turn) return;
      this.refuse(say('merge-refused', { name: file.name, why: messageOf(error) }));
      return;
    }
    this.dialog.showModal();
  }

  /** @param {string} name @param {Looked} looked */
  showMerge(name, { merge: { log, parted, behind, kept, taken, clashes, astray }, view }) {
    setText(this.from, [name, log.people, say('merge-entries', { n: log.entries })].filter((text) => text).join(' · '));
    const lost = view.rows.filter(({ id }) => astray.rows.includes(id)).map(({ number }) => number);
    const planned = astray.positions.map(({ rail, reading }) => [rail, reading].join(' · '));
    this.notes.replaceChildren(...[
      parted === null ? '' : say('merge-parted', { n: parted }),
      behind === null ? '' : say('merge-behind', { n: behind }),
      kept.length === 0 ? '' : say('merge-kept', { n: kept.length }),
      lost.length === 0 ? '' : say('merge-astray', { n: lost.length, rows: { all: lost.map(String) } }),
      planned.length === 0 ? '' : say('merge-astray-planned', { n: planned.length, positions: { all: planned } }),
    ].filter((text) => text).map((text) => el('p', {}, text)));
    const parts = taken.flatMap((edit) => partsOf(edit, view, view.entries));
    const rows = taken.filter((edit) => typeof edit === 'object' && 'add_row' in edit).length;
    const last = this.book.view.rows.length;
    const n = parts.filter(({ row = 0 }) => row <= last).length;
    setText(this.count, say('merge-taken', { rows, n }));
    this.taken.replaceChildren(...parts.slice(0, MOST).map(({ where, to }) => line(where, to)));
    setHidden(this.unlisted, parts.length <= MOST);
    setText(this.unlisted, say('merge-more', { n: Math.max(parts.length - MOST, 0) }));
    setHidden(this.box, parts.length === 0);
    setText(this.lead, clashes.length > 0 ? say('merge-differ') : say('merge-agree'));
    setHidden(this.rest, clashes.length < 2);
    this.drawn = [];
    this.clashes.replaceChildren();
    this.draw(AT_ONCE);
    setOptional(this.state, '');
  }

  /** Puts some more clashes on the page. @param {number} some */
  draw(some) {
    if (!this.looked) return;
    const { merge: { clashes }, view, choices } = this.looked;
    const from = this.drawn.length;
    for (const [place, clash] of clashes.slice(from, from + some).entries()) {
      const radios = this.choice(clash, from + place, clashes.length, view);
      radios.show(choices[from + place] ?? '');
      this.drawn.push(radios);
      this.clashes.append(radios.root);
    }
    setHidden(this.more, this.drawn.length >= clashes.length);
  }

  /** Chooses the same for all clashes that are left without a choice. @param {'ours' | 'theirs'} choice */
  chooseRest(choice) {
    if (!this.looked) return;
    const { choices } = this.looked;
    for (const [place, chosen] of choices.entries()) choices[place] = chosen ?? choice;
    for (const [place, radios] of this.drawn.entries()) radios.show(choices[place] ?? '');
    setOptional(this.state, '');
  }

  /** Both sides of a clash, and the choice. @param {Clash} clash @param {number} place @param {number} count @param {View} view */
  choice(clash, place, count, view) {
    /** @type {ClashChoice[]} */
    const offered = clash.both.length > 0 ? ['ours', 'theirs', 'both'] : ['ours', 'theirs'];
    const radios = new Radios({
      name: `merge-${place}`, legend: say('merge-clash', { n: place + 1, all: count }), options: each(offered, (key) => say(`merge-choices-${key}`)),
    }, (/** @type {ClashChoice} */ value) => {
      if (this.looked) this.looked.choices[place] = value;
    });
    const lines = el('tbody', {}, ...sides(clash, view).map(({ where, ours, theirs }) => line(where, ...(
      ours === theirs ? [ours, [theirs, say('merge-unlike')].filter((text) => text).join(' · ')] : [ours, theirs]))));
    radios.root.firstElementChild?.after(tableOf(lines, say('history-columns-where'), say('merge-ours'), say('merge-theirs')));
    return radios;
  }

  /** Takes what was shown, and chosen. */
  async confirm() {
    if (!this.looked) return;
    const { desk, length, merge: { log, kept, taken, clashes }, choices, files } = this.looked;
    const open = choices.findIndex((choice) => choice === undefined);
    if (open >= 0) {
      setOptional(this.state, say('merge-open', { n: choices.filter((choice) => choice === undefined).length }));
      if (open >= this.drawn.length) this.draw(open + 1 - this.drawn.length);
      this.clashes.children[open]?.querySelector('input')?.focus();
      return;
    }
    const chosen = clashes.flatMap((clash, place) => {
      const choice = choices[place] ?? 'ours';
      return choice === 'ours' ? [] : clash[choice];
    });
    /** @type {Edit} */
    const edit = { together: [...kept, ...taken, ...chosen, { merged: log }] };
    // Pressed twice it is done once.
    this.looked = undefined;
    this.dialog.close();
    // At hand before the rows that rest on them.
    const named = JSON.stringify(edit);
    const lost = await keepFiles(files.filter(([sha256]) => named.includes(sha256)));
    const isAsItWas = this.book.desk === desk && desk.length() === length;
    if (!isAsItWas) this.refuse(say('merge-changed'));
    else if (this.book.edit(edit)) this.book.onUndoable(inWords(lost ? [say('merge-done'), lost] : say('merge-done')));
  }
}

/** @param {HTMLTableSectionElement} lines @param {string[]} heads */
function tableOf(lines, ...heads) {
  return el('table', {}, el('thead', {}, el('tr', {}, ...heads.map((head) => el('th', { scope: 'col' }, head)))), lines);
}

/** @param {string} where @param {string[]} texts */
function line(where, ...texts) {
  return el('tr', {}, el('th', { scope: 'row' }, where), ...texts.map((text) => el('td', { dir: 'auto' }, text || say('merge-empty'))));
}

/**
 * What stands on either side of a clash, place by place.
 * @param {Clash} clash
 * @param {View} view
 */
function sides(clash, view) {
  /** @type {Map<string, {where: string, ours: string, theirs: string}>} */
  const places = new Map();
  for (const side of /** @type {const} */ (['ours', 'theirs'])) {
    for (const { key, where, to } of clash[side].flatMap((edit) => partsOf(edit, view, view.entries))) {
      places.set(key, { ...places.get(key) ?? { where, ours: '', theirs: '' }, [side]: to });
    }
  }
  return [...places.values()];
}

/**
 * The view with the rows and rails that edits begin, rows numbered as they will be.
 * @param {View} view
 * @param {Edit[]} edits
 * @returns {View}
 */
function withNew(view, edits) {
  const [rows, rails] = [[...view.rows], [...view.rails]];
  for (const edit of edits) {
    if (typeof edit === 'string') continue;
    if ('add_row' in edit) rows.push(/** @type {View['rows'][number]} */ ({ id: edit.add_row.row, number: rows.length + 1 }));
    if ('add_rail' in edit && !rails.some(({ id }) => id === edit.add_rail)) {
      rails.push(/** @type {View['rails'][number]} */ ({ id: edit.add_rail, fields: { name: plain(nameIn(edits, edit.add_rail)) } }));
    }
  }
  return { ...view, rows, rails };
}

/** What edits call a rail. @param {Edit[]} edits @param {number} rail */
function nameIn(edits, rail) {
  const named = edits.flatMap((edit) => (typeof edit === 'object' && 'set_rail' in edit ? [edit.set_rail] : []));
  return named.find((one) => one.rail === rail && one.field === 'name')?.text ?? '';
}
