/**
 * What was entered in a notebook, entry by entry, as people read it: when, where, from what to what. Each entry has a digest
 * that holds all before it, so that a later change shows to those who noted one.
 */
import { railName } from './apparatus.js';
import { core, messageOf } from './core.js';
import { byId, download, el, setHidden, setText } from './dom.js';
import { Roving } from './roving.js';
import { flushAll } from './typing.js';
import { dated, say } from './words.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Cell, Edit, Splice, UncertaintyOf, View } from './types.js' */
/** @typedef {{key: string, row?: number, where: string, to: string}} WrittenPart what one edit wrote, and where */
/** @typedef {WrittenPart & {from: string}} Written what stood there before, too */
/** @typedef {{n: number, at: string, rows: (number | undefined)[], where: string, from: string, to: string}} HistoryLine */

/** How many lines are put on the page at once. */
const AT_ONCE = 200;
/** What is told of each entry. */
const COLUMNS = /** @type {const} */ (['n', 'at', 'where', 'from', 'to', 'digest']);
/** What is chosen to be shown beside the number of a row. */
const ALL = '';
const NO_ROW = 'no-row';
/** The number of all rows that are no longer there. */
const GONE = 0;

/** The heading under which an edit stands that has no field of its own. */
const UNDER = /** @type {const} */ ({
  set_setting: 'settings-title', remove_setting: 'settings-title',
  set_shared: 'shared-title', remove_shared: 'shared-title', set_covariance: 'uncertainty-title', remove_covariance: 'uncertainty-title',
  set_kind: 'uncertainty-title', set_position: 'plan-title', remove_position: 'plan-title', set_rehearsal: 'plan-title',
  set_note: 'notes-title', remove_note: 'notes-title', set_trials: 'trials-title', set_claim: 'result-title', seal: 'seal-title', open_seal: 'seal-open-title', set_grid: 'pictures-title',
  set_estimator: 'traces-title', set_piece: 'handout-title', set_task: 'handout-tasks-title', remove_task: 'handout-tasks-title',
  answer: 'handout-tasks-title', hand_out: 'handout-title', read_cautions: 'cautions-title', set_path: 'apparatus-title',
  set_beam: 'apparatus-title', set_decimal_mark: 'readings-title', copied: 'strip-title', merged: 'merge-title',
});

export class HistorySection {
  /** @param {Book} book @param {(entry: number) => void} replay plays the run back from an entry */
  constructor(book, replay) {
    this.book = book;
    this.replay = replay;
    /** @type {HistoryLine[]} */
    this.lines = [];
    /** The digest of the log up to each entry. @type {string[]} */
    this.digests = [];
    /** The first entry that can be played back. */
    this.playable = 1;
    this.shown = 0;
    this.only = el('select', { id: 'history-only', change: () => this.show() });
    this.digest = el('p', { class: 'hint', role: 'status' });
    this.more = el('button', { type: 'button', click: () => this.add() }, say('history-more'));
    this.file = el('button', { type: 'button', click: () => this.take() }, say('history-take'));
    const heads = COLUMNS.map((column) => el('th', { scope: 'col' }, say(`history-columns-${column}`)));
    this.table = el('table', {}, el('thead', {}, el('tr', {}, ...heads)));
    this.numbers = new Roving(this.table, 'button');
    this.dialog = el('dialog', { class: 'history', 'aria-labelledby': 'history-title' },
      el('h2', { id: 'history-title' }, say('report-history')), el('p', { class: 'hint' }, say('history-hint')),
      el('p', { class: 'field' }, el('label', { for: 'history-only' }, say('history-only')), this.only),
      el('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-labelledby': 'history-title' }, this.table), this.digest,
      el('p', { class: 'actions' }, this.more, this.file,
        el('button', { type: 'button', class: 'quiet', click: () => this.dialog.close() }, say('close'))));
    document.body.append(this.dialog);
    byId('open-history').addEventListener('click', () => this.open());
  }

  async open() {
    flushAll();
    const entries = this.book.desk.entries(0);
    const lines = linesOf(entries.map((text) => JSON.parse(text)), this.book.current());
    this.lines = lines;
    this.digests = [];
    // What a closed seal covers is not played back.
    this.playable = this.book.view.result.sealed ? this.book.desk.steps()[0]?.end ?? 1 : 1;
    const rows = [...new Set(lines.flatMap((line) => line.rows.flatMap((row) => row ?? [])))].sort((a, b) => a - b);
    this.only.replaceChildren(el('option', { value: ALL }, say('history-all')), el('option', { value: NO_ROW }, say('history-no-row')),
      ...rows.map((row) => el('option', { value: String(row) }, rowName(row))));
    setText(this.digest, say('history-digests-coming'));
    // A file without digests would prove nothing.
    this.file.disabled = true;
    this.dialog.showModal();
    this.show();
    try {
      const digests = await reader.ask('chain', entries);
      // It may have been opened anew meanwhile.
      if (this.lines !== lines) return;
      this.digests = digests;
      setText(this.digest, say('history-proves', { digest: digests.at(-1) ?? '–' }));
    } catch (error) {
      if (this.lines !== lines) return;
      setText(this.digest, messageOf(error));
    }
    this.file.disabled = false;
    this.show();
  }

  /** Those asked for, the newest first. */
  chosen() {
    const { value } = this.only;
    return this.lines.filter(({ rows }) => value === ALL || rows.some((row) => value === String(row ?? NO_ROW))).reverse();
  }

  show() {
    for (const day of [...this.table.tBodies]) day.remove();
    this.shown = 0;
    this.add();
  }

  add() {
    const all = this.chosen();
    let day = this.shown > 0 ? dayOf(all[this.shown - 1]?.at ?? '') : undefined;
    let last = all[this.shown - 1]?.n;
    for (const line of all.slice(this.shown, this.shown + AT_ONCE)) {
      const here = dayOf(line.at);
      if (here !== day) this.table.append(el('tbody', {}, el('tr', {},
        el('th', { scope: 'rowgroup', colspan: String(COLUMNS.length) }, here || say('history-no-time')))));
      day = here;
      const isFirst = line.n !== last;
      const digest = isFirst ? (this.digests[line.n - 1] ?? '').slice(0, 8) : '';
      [...this.table.tBodies].at(-1)?.append(el('tr', {}, el('td', {}, isFirst && line.n >= this.playable ? this.number(line.n) : String(line.n)),
        ...[timeOf(line.at), line.where, line.from, line.to].map((text) => el('td', {}, text)), el('td', { class: 'digest' }, digest)));
      last = line.n;
    }
    this.numbers.settle();
    this.shown = Math.min(all.length, this.shown + AT_ONCE);
    setHidden(this.more, this.shown >= all.length);
  }

  /** The number of an entry, from which the run can be played back. @param {number} n */
  number(n) {
    const name = say('history-replay', { n });
    return el('button', { type: 'button', class: 'quiet', 'aria-label': name, title: name, click: () => this.replay(n) }, String(n));
  }

  /** All of it as a table, with every digest whole. */
  take() {
    const columns = COLUMNS.map((column) => say(`history-columns-${column}`));
    const cells = this.lines.flatMap(({ n, at, where, from, to }) => [String(n), at, where, from, to, this.digests[n - 1] ?? '']);
    download(core.csv([...columns, ...cells], columns.length), 'text/csv;charset=utf-8', 'history.csv');
  }
}

/** The day of an entry; what its file says where that is no time. @param {string} at */
function dayOf(at) {
  return dated(at, { dateStyle: 'full' }) || at;
}

/** @param {string} at */
function timeOf(at) {
  return dated(at, { timeStyle: 'medium' }) || at;
}

/**
 * The log in lines; what is taken back gives its place the text from before. There is always something to take back, or to do
 * again: the core takes no other log.
 * @param {{at?: string, edit: Edit}[]} entries
 * @param {View} view
 */
function linesOf(entries, view) {
  /** @type {Map<string, string>} */
  const texts = new Map();
  /** Entries that hold, and that were taken back, the last one last. @type {{n: number, parts: Written[]}[]} */
  const done = [];
  /** @type {typeof done} */
  let undone = [];
  /** @type {HistoryLine[]} */
  const lines = [];
  for (const [place, { at = '', edit }] of entries.entries()) {
    const n = place + 1;
    if (edit === 'undo' || edit === 'redo') {
      const moved = edit === 'undo' ? done.pop() : undone.pop();
      if (!moved) continue;
      if (edit === 'undo') {
        for (const { key, from } of [...moved.parts].reverse()) texts.set(key, from);
        undone.push(moved);
      } else {
        for (const { key, to } of moved.parts) texts.set(key, to);
        done.push(moved);
      }
      lines.push({ n, at, rows: moved.parts.map(({ row }) => row), where: say(`history-${edit}`, { n: moved.n }), from: '', to: '' });
      continue;
    }
    const parts = partsOf(edit, view, place).map((part) => {
      const from = texts.get(part.key) ?? '';
      texts.set(part.key, part.to);
      return { ...part, from };
    });
    done.push({ n, parts });
    undone = [];
    for (const { row, where, from, to } of parts) lines.push({ n, at, rows: [row], where, from, to });
  }
  return lines;
}

/**
 * What an edit wrote. A row bears the number that it has now.
 * @param {Edit} edit
 * @param {View} view
 * @param {number} place in the log, from 0
 * @returns {WrittenPart[]}
 */
export function partsOf(edit, view, place) {
  if (typeof edit === 'string') return [{ key: edit, where: heading(edit), to: '' }];
  if ('together' in edit) return edit.together.flatMap((one) => partsOf(one, view, place));
  if ('add_row' in edit) {
    const { row, cells = {} } = edit.add_row;
    const begun = inRow(view, row, 'begun', say('history-begun'));
    return [begun, ...(/** @type {[Cell, string][]} */ (Object.entries(cells))).map(([cell, text]) => inCell(view, row, cell, text))];
  }
  if ('set_cell' in edit) return [inCell(view, edit.set_cell.row, edit.set_cell.cell, edit.set_cell.text)];
  if ('strike_row' in edit) return [inRow(view, edit.strike_row.row, 'struck', say('history-struck', { reason: edit.strike_row.reason }))];
  if ('restore_row' in edit) return [inRow(view, edit.restore_row, 'struck', say('history-restored'))];
  if ('set_evidence' in edit) {
    const { row, evidence } = edit.set_evidence;
    const files = !evidence ? [] : 'picture' in evidence ? [evidence.picture.file] : evidence.traces.files;
    return [inRow(view, row, 'evidence', files.map(({ name }) => name).join(', '))];
  }
  if ('set_title' in edit) return [{ key: 'title', where: say('strip-title'), to: edit.set_title }];
  if ('copied' in edit && !isTitleFixed(view, place)) return [{ key: 'title', where: say('strip-title'), to: edit.copied }];
  if ('set_bench' in edit) {
    const { field, text } = edit.set_bench;
    return [{ key: `bench ${field}`, where: say(`fields-${field}`), to: text }];
  }
  if ('set_photo' in edit) return [{ key: 'photo', where: say('photo-title'), to: edit.set_photo?.name ?? '' }];
  const [name = ''] = Object.keys(edit);
  const where = 'set_kind' in edit ? uncertaintyName(edit.set_kind.of) : heading(name);
  return railParts(edit, view) ?? [{ key: keyOf(name, edit), where, to: typed(edit) }];
}

/** What an uncertainty is called that is not a rail's. @param {UncertaintyOf} of */
function uncertaintyName(of) {
  if (of === 'edge') return say('fields-edge_half_width');
  if (of === 'time_base') return say('fields-time_base_uncertainty');
  if (of === 'mark') return say('fields-mark_uncertainty');
  return 'setting' in of ? say('settings-uncertainty') : say('shared-uncertainty');
}

/** The heading over what an edit of a name changes. @param {string} name */
function heading(name) {
  return name in UNDER ? say(UNDER[/** @type {keyof typeof UNDER} */ (name)]) : say('replay-else');
}

/** Whether a hand-out had fixed the title by a place in the log. @param {View} view @param {number} place */
function isTitleFixed({ handout: { entries, fixed } }, place) {
  return entries > 0 && place >= entries && fixed.includes('title');
}

/** Tells the places from one another that edits write to, or clear. @param {string} name @param {Exclude<Edit, string>} edit */
function keyOf(name, edit) {
  const place = name.replace(/^(set|remove)_/, '');
  const carried = Object.values(edit)[0];
  if (Array.isArray(carried)) return `${place} ${carried[0]}`;
  if (carried && typeof carried === 'object') {
    const { id, of, acts_on: actsOn } = carried;
    return `${place} ${id ?? (of === undefined ? actsOn ?? '' : JSON.stringify(of))}`;
  }
  // What is chosen for the whole notebook is carried by itself.
  return typeof carried === 'number' || name.startsWith('remove_') ? `${place} ${carried}` : place;
}

/** @param {Exclude<Edit, string>} edit @param {View} view @returns {WrittenPart[] | undefined} */
function railParts(edit, view) {
  /** @type {(rail: number, what: string, field: string, to: string) => WrittenPart[]} */
  const on = (rail, what, field, to) => {
    const place = view.rails.findIndex(({ id }) => id === rail);
    const found = view.rails[place];
    return [{ key: `rail ${rail} ${what}`, where: [found ? railName(found, place) : say('rails-title'), field].filter((text) => text).join(' · '), to }];
  };
  if ('add_rail' in edit) return on(edit.add_rail, '', '', say('history-added'));
  if ('remove_rail' in edit) return on(edit.remove_rail, '', '', say('history-removed'));
  if ('set_rail' in edit) {
    const { rail, field, text } = edit.set_rail;
    return on(rail, field, say(`rails-fields-${field}`), text);
  }
  if ('rename_rail' in edit) return on(edit.rename_rail.rail, 'name', say('rails-fields-name'), edit.rename_rail.name);
  if ('set_ruler_unit' in edit) return on(edit.set_ruler_unit.rail, 'unit', say('rails-unit'), say(`rails-units-${edit.set_ruler_unit.unit}`));
  if ('set_sense' in edit) return on(edit.set_sense.rail, 'sense', say('rails-sense'), say(`rails-senses-${edit.set_sense.sense}`));
  if ('set_splice' in edit) return on(edit.set_splice.rail, 'splice', say('splice-legend'), spliceOf(edit.set_splice.splice));
  if (!('set_kind' in edit)) return undefined;
  const { of, kind } = edit.set_kind;
  const to = say(`field-kinds-${kind}`);
  if (typeof of === 'string') return undefined;
  if ('ruler_reading' in of) return on(of.ruler_reading, 'reading-kind', say('rails-fields-reading_uncertainty'), to);
  if ('ruler_scale' in of) return on(of.ruler_scale, 'scale-kind', say('rails-fields-scale_uncertainty'), to);
  return 'splice' in of ? on(of.splice, 'splice-kind', say('splice-uncertainty'), to) : undefined;
}

/** @param {Splice} splice */
function spliceOf(splice) {
  const kind = typeof splice === 'string' ? splice : /** @type {keyof typeof splice} */ (Object.keys(splice)[0]);
  return [say(`splice-kinds-${kind}`), ...(typeof splice === 'string' ? [] : textsIn(splice))].join(' · ');
}

/** @param {View} view @param {number} row @param {string} what @param {string} to @param {string} [column] @returns {WrittenPart} */
function inRow({ rows }, row, what, to, column) {
  const number = rows.find(({ id }) => id === row)?.number ?? GONE;
  return { key: `row ${row} ${what}`, where: [rowName(number), column].filter((text) => text).join(' · '), to, row: number };
}

/** @param {number} row */
function rowName(row) {
  return row === GONE ? say('history-row-gone') : say('notices-row', { n: row });
}

/** @param {View} view @param {number} row @param {Cell} cell @param {string} text @returns {WrittenPart} */
function inCell(view, row, cell, text) {
  return inRow(view, row, cell, text, say(`readings-columns-${cell}`));
}

/** What was typed or chosen in an edit that has no field of its own. @param {Exclude<Edit, string>} edit */
function typed(edit) {
  if ('set_setting' in edit) return inOrder(edit.set_setting.time_per_division, edit.set_setting.uncertainty);
  if ('set_shared' in edit) {
    const { name, acts_on: actsOn, effect, uncertainty } = edit.set_shared;
    return inOrder(name, say(`shared-acts-${actsOn}`), say(`shared-effects-${effect}`), uncertainty);
  }
  if ('set_position' in edit) {
    const { rail, reading, time_base: timeBase, repeats } = edit.set_position;
    return inOrder(rail, reading, timeBase, repeats && `× ${repeats}`);
  }
  if ('set_covariance' in edit) return say(`marked-covariance-${edit.set_covariance.acts_on}`);
  if ('set_grid' in edit) return `${edit.set_grid.columns} × ${edit.set_grid.rows}`;
  if ('set_note' in edit) return edit.set_note.text;
  if ('set_rehearsal' in edit) return say('plan-rehearsal');
  if ('set_claim' in edit) return inOrder(say(`result-bases-${edit.set_claim.basis}`), edit.set_claim.reason);
  if ('set_trials' in edit) return inOrder(edit.set_trials.wanted, edit.set_trials.seed);
  if ('set_kind' in edit) return say(`field-kinds-${edit.set_kind.kind}`);
  if ('set_path' in edit) return say(`apparatus-paths-${edit.set_path}`);
  if ('set_beam' in edit) return say(`apparatus-beams-${edit.set_beam}`);
  if ('set_decimal_mark' in edit) return say(`preferences-marks-${edit.set_decimal_mark}`);
  if ('set_piece' in edit) return inOrder(say(`handout-pieces-${edit.set_piece[0]}`), say(`handout-rules-${edit.set_piece[1]}`));
  if ('merged' in edit) {
    const { people, entries, digest } = edit.merged;
    return inOrder(people, say('history-merged', { n: entries, digest }));
  }
  if ('read_cautions' in edit) return edit.read_cautions;
  if ('answer' in edit) return edit.answer[1];
  if ('set_task' in edit) return edit.set_task[3];
  if ('set_estimator' in edit) return say(`traces-estimators-${edit.set_estimator}`);
  return Object.keys(edit)[0]?.startsWith('remove_') ? say('history-removed') : '';
}

/** Texts that were written together. @param {...string} texts */
function inOrder(...texts) {
  return textsIn(texts).join(' · ');
}

/** The texts in a value, empty ones left out. @param {unknown} value @returns {string[]} */
function textsIn(value) {
  if (typeof value === 'string') return value === '' ? [] : [value];
  return value && typeof value === 'object' ? Object.values(value).flatMap(textsIn) : [];
}
