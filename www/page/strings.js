/**
 * Every text that the page says by itself, in one table. What is computed comes from the core with its words.
 */

import { benchTexts } from './strings/bench.js';
import { pictures, traces } from './strings/delays.js';
import { plan } from './strings/plan.js';

export const words = {
  app: 'Slope of Light',
  skip: 'Go to the readings',
  outline: 'Outline',
  untitled: 'Untitled notebook',
  loading: 'Opening the notebook…',
  noCore: 'The notebook could not start.',

  section: {
    loading: 'This section is being loaded…',
    failed: (/** @type {string} */ name, /** @type {string} */ why) =>
      `The section “${name}” could not be loaded (${why}). All else works, and what you type is kept. If trying again does not `
      + 'help, load the page again.',
    again: 'Try again',
    otherNotebook: (/** @type {string} */ name) =>
      `Another notebook was opened before the section “${name}” was there: what you asked of it was not done. Ask again `
      + 'where it belongs.',
  },

  strip: {
    title: 'Title of the notebook',
    titleHint: 'Give this notebook a title',
    result: 'Result so far',
    noResult: 'no result yet',
    rows: (/** @type {number} */ used, /** @type {number} */ all) => `${used} of ${all} rows used`,
    noNotices: 'no notices',
    oneNotice: '1 notice',
    notices: (/** @type {number} */ n) => `${n} notices`,
    undo: 'Undo',
    redo: 'Redo',
    notebooks: 'Notebooks',
    settings: 'Settings',
  },

  saving: {
    saved: 'Saved',
    saving: 'Saving…',
    notSaved: 'Not saved',
    reading: 'Read only',
    noJournal: 'This browser gives the page no place to keep your work. Take the bundle before you close the page.',
    full:
      'The browser’s storage is full: your last changes are not saved. Take the bundle now; deleting notebooks you no '
      + 'longer need makes room. The page goes on trying.',
    failed: (/** @type {string} */ why) =>
      `Your last changes are not saved (${why}). The page goes on trying; take the bundle to be sure.`,
    shelfFull:
      'The browser’s storage is nearly full. Your work is still saved edit by edit; deleting notebooks you no '
      + 'longer need makes room.',
    otherTab: 'This notebook is being written in another window. You are reading along here.',
    takeOver: 'Write here instead',
    apartTitle: (/** @type {string} */ title) => `${title} (typed in another window)`,
    apart: (/** @type {string} */ title) =>
      `Another window came to write before your last changes were saved. They are kept in “${title}”.`,
    openApart: 'Open it',
    tryAgain: 'Try again now',
    stay: 'The last changes of this notebook are not saved yet. Take the bundle first.',
    aside: (/** @type {number} */ n) =>
      `${n} later changes of this notebook don’t follow on from what is stored, so they were set aside, not lost.`,
    takeBundle: 'Take the bundle',
    dismiss: 'Close this message',
    cannotOpen: (/** @type {string} */ title, /** @type {string} */ why) =>
      `“${title}” can’t be opened and was left as it is: ${why}`,
  },

  ...benchTexts,

  readings: {
    title: 'Readings',
    hint: 'One row for each carriage position. Enter goes to the next row, Tab to the next cell. '
      + 'A block copied from a spreadsheet can be pasted into any cell. '
      + 'A press on a row’s number tells how it was worked out.',
    start: 'No readings yet. Type in the row below; what stands there in grey is proposed and is taken when you type '
      + 'or press Enter.',
    direct: 'Give distance or delay directly',
    caption: 'Readings, one row for each carriage position',
    row: 'Row',
    columns: {
      rail: 'Rail',
      reading: 'Reading',
      time_base: 'Time base',
      edge_a: 'Edge A',
      edge_b: 'Edge B',
      distance: 'Distance given',
      distance_uncertainty: 'its u',
      delay: 'Delay given',
      delay_uncertainty: 'its u',
      remark: 'Remark',
    },
    units: {
      rail: '',
      reading: 'ruler’s unit',
      time_base: 'ns/div',
      edge_a: 'div',
      edge_b: 'div',
      distance: 'm',
      distance_uncertainty: 'm',
      delay: 'ns',
      delay_uncertainty: 'ns',
      remark: '',
    },
    outputs: { distance: 'd', delay: 'Δt', residual: 'Residual' },
    outputUnits: { distance: 'm', delay: 'ns', residual: 'in u' },
    outputNames: { distance: 'Distance', delay: 'Delay', residual: 'Residual' },
    actions: 'Strike out',
    strike: 'Strike out',
    strikeRow: (/** @type {number} */ n) => `Strike out row ${n}`,
    restore: 'Restore',
    restoreRow: (/** @type {number} */ n) => `Restore row ${n}`,
    notUsed: 'not used yet',
    newRow: 'new',
    workOf: (/** @type {number} */ n) => `How row ${n} was worked out`,
    newCell: (/** @type {string} */ column) => `${column}, new row`,
    cell: (/** @type {string} */ column, /** @type {number} */ n) => `${column}, row ${n}`,
    struck: (/** @type {string} */ reason) => `Struck out: ${reason}`,
    problem: (/** @type {string} */ column, /** @type {string} */ problem) => `${column}: ${problem}`,
  },

  plan,
  pasted: {
    turned: 'The block was written with the other decimal mark: its numbers were given this notebook’s.',
    headed: (/** @type {string} */ headings) => `The headings “${headings}” were left out.`,
  },

  rowWork: { none: 'This row tells no distance and no delay yet.', close: 'Close' },

  delays: {
    title: 'Delays',
    hint: 'Where the delay of a row comes from, if it is not typed: a photograph of the screen, or recorded traces.',
    fields: {
      mark_uncertainty: 'A mark on a picture: standard uncertainty',
      trace_level: 'Fixed level over the baseline',
      trace_fraction: 'Constant fraction',
    },
    from: { picture: 'picture', traces: 'traces' },
    jump: {
      picture: (/** @type {number} */ n) => `Show the picture of row ${n}`,
      traces: (/** @type {number} */ n) => `Show the traces of row ${n}`,
    },
  },

  pictures,
  traces,
  onlyHere: 'This browser gives the page no place to keep files, as in a private window: they last until the page is closed. '
    + 'Take the bundle (.zip) before that: it holds them.',

  strike: {
    title: (/** @type {number} */ n) => `Strike out row ${n}`,
    hint: 'The row stays visible and can be restored. The reason goes into the notebook and the report.',
    reason: 'Reason',
    needed: 'Write the reason first.',
    confirm: 'Strike out',
    cancel: 'Cancel',
  },

  line: {
    title: 'Line',
    plot: 'Delay against distance',
    residuals: 'Residuals',
    figures: 'The line',
    checks: 'Checks',
    checksHint: 'Other ways to look at the same rows. None of them changes the result.',
    table: 'Figure, value and meaning',
  },

  uncertainty: {
    title: 'Uncertainty',
    fields: { coverage: 'Coverage probability' },
  },

  budget: {
    caption: 'The budget: components of the uncertainty, the largest first',
    hint: 'Move a slider to see what the uncertainty would be if that component were smaller or larger. It changes '
      + 'nothing in the notebook.',
    columns: {
      name: 'Component',
      acts_on: 'Acts on',
      u: 'u',
      shape: 'Distribution',
      degrees_of_freedom: 'ν',
      sensitivity: 'Sensitivity',
      contribution: 'Effect on c',
      share: 'Share',
      what_if: 'What if',
    },
    whatIfOf: (/** @type {string} */ name) => `What if: ${name}`,
    factors: ['× 0', '× ¼', '× ½', '× ¾', '× 1', '× 1¼', '× 1½', '× 1¾', '× 2'],
    answer: (/** @type {string} */ factor) => `With this component ${factor}:`,
    nothing: 'no figure changes.',
    insteadOf: (/** @type {string} */ now) => `instead of ${now}`,
    reset: 'Back to × 1',
  },

  trials: {
    title: 'Trials',
    hint: 'A check of the budget (Monte Carlo): every input is drawn from its distribution, again and again, and the '
      + 'whole analysis is done for each draw. The same seed gives the same digits in every browser.',
    wanted: 'Number of trials',
    seed: 'Seed',
    newSeed: 'New seed',
    start: 'Run the trials',
    stop: 'Stop',
    progress: 'Progress of the trials',
    running: 'Running…',
    done: 'Done.',
    stopped: 'Stopped. This is what came of the trials so far.',
    changed: 'Stopped, because the notebook changed.',
    stale: 'The notebook has changed since. What follows belongs to it as it was.',
    failed: (/** @type {string} */ why) => `The trials could not be run: ${why}`,
    unsaid: 'the browser did not let the page start its helpers and does not say why.',
    here: 'Run them in the page itself (slower)',
    plot: 'What the trials gave',
  },

  evidence: {
    unsaid: 'the browser does not say why',
    /** What the page itself refuses, by kind; the name is that of a file, or the reason. */
    refusals: {
      too_large: (/** @type {string} */ name) =>
        `${name}: this file is larger than 64 MB. Save the trace with fewer samples about the pulse, or the picture in a `
        + 'smaller size.',
      too_many: (/** @type {string} */ count) => `${count} files are more than the 2,000 that are taken at once. Add them in parts, such as a folder for each rail.`,
      file: (/** @type {string} */ name) =>
        `${name}: the file can’t be read any more. It may have been moved, changed or taken away; choose it again.`,
      decode: (/** @type {string} */ name) =>
        `${name}: the browser can’t read this picture. It may be damaged; copy it again from the camera, or save it anew.`,
      no_canvas: () => 'This browser can’t work on pictures beside the page. Use a newer one.',
      start: (/** @type {string} */ why) =>
        `What reads traces and pictures could not be started (${why}). Check the connection, and try again.`,
      crash: (/** @type {string} */ why) =>
        `Reading traces or pictures came to a bad end (${why}). Nothing of the notebook is lost; try again, or with a `
        + 'smaller file.',
      stopped: () => 'Stopped.',
      nothing_kept: () => 'The traces are no longer at hand. Open their files again.',
    },
  },

  result: {
    title: 'Result',
    figures: 'From the slope to c',
    sentences: 'In words',
    copy: 'Copy',
    copied: 'Copied.',
    notCopied: 'The browser did not let the page copy. Select the text and copy it by hand.',
    choice: 'Which uncertainty do you claim?',
    bases: { stated: 'the one from what was stated', scatter: 'the one from the scatter of the points' },
    reason: 'Why',
  },

  seal: {
    mark: 'sealed',
    title: 'Seal the result',
    hint: 'Until the seal is opened, every v and c that is shown carries a hidden factor within ±8 %. So the known '
      + 'answer can’t steer which rows are kept and what is stated. A notebook can be sealed once.',
    put: 'Put the seal on',
    sealed: 'The result is sealed: every v and c that is shown carries a hidden factor within ±8 %.',
    open: 'Open the seal…',
    openTitle: 'Open the seal?',
    openHint: 'The true v and c will be shown from then on. This can’t be undone, and it is written in the history.',
    openSure: 'Open it for good',
    keep: 'Keep it sealed',
  },

  report: {
    notInBundle: (/** @type {number} */ n) =>
      (n === 1 ? 'One picture is not kept in this browser: the bundle holds its marks only.'
        : `${n} pictures are not kept in this browser: the bundle holds their marks only.`),
    notKept: (/** @type {string} */ name, /** @type {string} */ why) =>
      `${name}: the browser could not keep the picture (${why}). Try again.`,
    title: 'Report',
    fields: {
      people: 'Who measured', place: 'Where and when', aim: 'Aim', method: 'Method', discussion: 'Discussion',
    },
    take: 'Take away',
    open: 'Open the report',
    openHint: 'In a new tab, to read, print or keep as PDF.',
    blocked: 'The browser did not let the page open a tab. The report was offered as a file instead.',
    bundle: 'Take the bundle (.zip)',
    bundleHint: 'The whole notebook with tables, charts and report. It can be opened again here.',
    tables: 'Readings table',
    format: 'Form',
    formats: { csv: 'CSV', latex: 'LaTeX', markdown: 'Markdown' },
    copyTable: 'Copy the table',
    takeTable: 'Take it as a file',
    openFile: 'Open a bundle or notebook file',
    openFileHint: 'It becomes a notebook of its own. You can also drop the file anywhere on this page.',
    drop: 'Let go: a notebook is opened, pictures go to the rows.',
    opened: (/** @type {string} */ title) => `“${title}” is open.`,
    notOpened: (/** @type {string} */ name, /** @type {string} */ why) => `${name} was not opened: ${why}`,
  },

  notices: {
    weights: { grave: 'Serious', look: 'Worth a look', know: 'Good to know' },
    more: (/** @type {number} */ n) => `and ${n} more`,
    row: (/** @type {number} */ n) => `row ${n}`,
    inRow: (/** @type {string} */ weight, /** @type {string} */ text) => `${weight}: ${text}`,
  },

  notebooks: {
    title: 'Notebooks',
    blank: 'New blank notebook',
    demo: 'New from the demo',
    demoSets: { photographs: 'Demo with photographs', traces: 'Demo with traces' },
    noDemo: 'The demo could not be read.',
    open: 'Open',
    current: 'open now',
    rename: 'Rename',
    newName: 'New title',
    keepName: 'Keep this title',
    duplicate: 'Duplicate',
    copyOf: (/** @type {string} */ title) => `${title} (copy)`,
    delete: 'Delete',
    deleted: (/** @type {string} */ title) => `“${title}” was deleted.`,
    bin: 'Deleted notebooks',
    putBack: 'Put back',
    forget: 'Delete for good',
    forgetSure: 'Press again to delete for good',
    close: 'Close',
    busy: 'That notebook is being written in another window. Close it there first.',
    nothingKept: 'This browser gives the page no place to keep them: these notebooks last until you close the page.',
    action: (/** @type {string} */ action, /** @type {string} */ title) => `${action}: ${title}`,
  },

  preferences: {
    title: 'Settings',
    theme: 'Light or dark',
    themes: { auto: 'as the system', light: 'light', dark: 'dark' },
    mark: 'Decimal mark in this notebook',
    marks: { point: 'point: 1.5', comma: 'comma: 1,5' },
    close: 'Close',
  },

  field: { ifEmpty: (/** @type {string} */ value) => `If empty: ${value}` },
  undo: 'Undo',
};

/**
 * The text at a path such as "strip.undo"; nothing where the table has none.
 * @param {string} path
 * @returns {string | undefined}
 */
function at(path) {
  /** @type {any} */
  let value = words;
  for (const name of path.split('.')) value = value?.[name];
  return typeof value === 'string' ? value : undefined;
}

/** Puts the texts where the page's HTML names them. */
export function putWords() {
  for (const node of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-words]'))) {
    node.textContent = at(node.dataset.words ?? '') ?? node.textContent;
  }
  for (const node of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-label-words]'))) {
    const text = at(node.dataset.labelWords ?? '');
    if (text !== undefined) node.setAttribute('aria-label', text);
  }
}
