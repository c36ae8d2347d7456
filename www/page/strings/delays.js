/**
 * The texts about delays that are not typed: photographs of the screen, and recorded traces.
 */

export const pictures = {
  title: 'Photographs of the screen',
  hint: 'Add the pictures of a whole run at once: choose them, drop them here, or paste one. A file name such as '
    + '“1250 mm.jpg” tells the reading. Each picture is scaled down, freed of what the camera wrote beside the pixels, '
    + 'and kept in this browser.',
  add: 'Add pictures',
  columns: 'Divisions across the grid',
  rows: 'Divisions down the grid',
  progress: (/** @type {number} */ done, /** @type {number} */ all) => `Taking in picture ${done + 1} of ${all}…`,
  added: (/** @type {number} */ n) => (n === 1 ? '1 picture was added.' : `${n} pictures were added.`),
  refusedTitle: 'Not taken:',
  full: (/** @type {string} */ name) =>
    `${name}: the browser’s storage is full, so the picture was not taken. Everything before it is kept. Take the `
    + 'bundle; deleting notebooks you no longer need makes room.',
  twice: (/** @type {string} */ name, /** @type {number} */ n) => (n > 0
    ? `${name} is the picture of row ${n} already: the same picture again is no other reading.`
    : `${name} was chosen twice, and is taken once.`),
  otherNotebook: 'Another notebook was opened meanwhile: the pictures were not added. Add them again where they belong.',
  choose: 'Picture',
  option: (/** @type {number} */ n, /** @type {string} */ name, /** @type {boolean} */ marked) =>
    `Row ${n}: ${name}${marked ? '' : ' (to be marked)'}`,
  left: (/** @type {number} */ marked, /** @type {number} */ all) => `${marked} of ${all} pictures are marked.`,
  loading: 'Looking at the picture…',
  missing: (/** @type {string} */ name) =>
    `${name} is not kept in this browser. Its marks are numbers, so the row counts all the same; a bundle holds the `
    + 'picture too.',
  missingMarks: (/** @type {string} */ name) =>
    `${name} is not kept in this browser, and nothing is marked on it yet. Open a bundle that holds it, or add it again.`,
  broken: (/** @type {string} */ name) => `${name}: the browser can’t show the picture that it kept. Add it again.`,
  picture: 'The picture with its grid drawn back over it',
  markGroup: 'Marks',
  proposed: 'These marks are proposed. Look whether the dashed grid lies on the grid of the screen and whether A and B '
    + 'stand at half the height of their edges; move what does not, then accept.',
  serves: (/** @type {number} */ n) =>
    `The corner marks of row ${n} serve this picture too: its grid lies where they say.`,
  moved: (/** @type {number} */ n) =>
    `The camera has moved since row ${n}: this grid lies elsewhere, so corner marks of its own are proposed.`,
  unseen: (/** @type {number} */ n) =>
    `The corner marks of row ${n} are taken. They could not be checked, because no grid was found here: look whether `
    + 'the dashed grid lies on the lines.',
  notFound: (/** @type {string} */ why) =>
    `Nothing is proposed (${why}). Move each mark to its place.`,
  noEdge: (/** @type {string} */ name) => `${name} was not found: move its mark there.`,
  how: 'Drag a mark, or click where the chosen one belongs. Arrow keys move it by a pixel, with Shift by a tenth, with '
    + 'Alt by ten. Enter accepts.',
  accept: 'Accept the marks',
  next: 'Next picture to be marked',
  stillSought: (/** @type {string} */ names) => `Not accepted yet: move ${names} first.`,
  gridWrong: (/** @type {string} */ why) => `Not accepted yet: ${why}.`,
  accepted: (/** @type {number} */ n, /** @type {string} */ lacks) =>
    `Row ${n} is marked${lacks && `, but not used in the line yet: ${lacks}`}.`,
  allMarked: 'All pictures are marked.',
  again: (/** @type {string} */ name, /** @type {number} */ n) => `${name}, mark ${n}`,
  markAgain: (/** @type {string} */ name) => `Mark ${name} once more`,
  dropMark: 'Remove the chosen mark',
  moveFirst: 'Put the new mark where you see the edge: it counts once it was moved.',
  ownCorners: 'Corner marks of its own',
  shared: (/** @type {number} */ n) => `Its corner marks serve ${n} pictures: moving one moves all those rows.`,
  takeOff: 'Take the picture off this row',
  takenOff: (/** @type {number} */ n) => `Row ${n} has no picture any more.`,
  marks: { a: 'Edge A', b: 'Edge B', corner: 'Corner', check: 'Check' },
  corners: ['Upper left corner', 'Upper right corner', 'Lower right corner', 'Lower left corner'],
  check: (/** @type {number} */ n) => `Crossing ${n} that checks the lens`,
  place: (/** @type {string} */ x, /** @type {string} */ y, /** @type {string} */ state) =>
    `${x} pixels across, ${y} down, ${state}`,
  states: { proposed: 'proposed', sought: 'not found', set: 'moved by hand', taken: 'accepted' },
  fields: { rail: 'Rail', reading: 'Reading', time_base: 'Time per division' },
};

export const traces = {
  title: 'Recorded traces',
  hint: 'Add the trace files of a whole run at once: choose them or their folder, or drop them here. Both traces may '
    + 'stand in one file, or in one file each. A file name such as “A 1250 mm ch1.csv” tells rail, reading and trace.',
  add: 'Add trace files',
  addFolder: 'Add a folder of them',
  looking: 'Looking at the files…',
  busy: (/** @type {number} */ n) =>
    `Other files are still being worked on, so what was added now was left out (${n === 1 ? '1 file' : `${n} files`}). Add it `
    + 'again once that has ended.',
  given: (/** @type {number} */ files, /** @type {number} */ pairs) =>
    `${files} files, ${pairs} positions. Look whether they are read rightly, then measure.`,
  measureAll: 'Measure all',
  forget: 'Leave them out',
  again: 'Measure again',
  againHint: 'After another level or fraction was stated.',
  stop: 'Stop',
  progress: 'Progress of the measurement',
  done: (/** @type {number} */ done, /** @type {number} */ all, /** @type {boolean} */ again) =>
    (again ? `${done} of ${all} again, by the level that all share` : `${done} of ${all} positions`),
  measured: (/** @type {number} */ n) => (n === 1 ? '1 position was measured.' : `${n} positions were measured.`),
  unchanged: 'Measured; nothing changed.',
  stopped: (/** @type {number} */ n) =>
    `Stopped. ${n} positions were measured and stand in the readings; their fixed level is that of each pair, until all `
    + 'are measured again.',
  undo: 'One undo takes them all back.',
  refusedTitle: 'Not taken:',
  more: (/** @type {number} */ n) => `and ${n} more.`,
  other: (/** @type {string} */ name) => `${name}: no trace file but a picture or a notebook; it was left out.`,
  otherNotebook: 'Another notebook was opened meanwhile: nothing was put into it. Add the files again where they belong.',
  badWish: 'Nothing was measured: correct the level or the fraction first.',
  needed: (/** @type {number} */ row, /** @type {string} */ name) =>
    `Row ${row}: ${name} is not kept in this browser. Add the file again to measure it anew; until then the row counts as it `
    + 'stands.',
  notKept: (/** @type {string} */ name, /** @type {string} */ why) =>
    `${name}: measured, but the file is not kept in this browser (${why}). To look at it or measure it again, add it again.`,
  manyTooLarge: (/** @type {number} */ n) =>
    `${n} files are over 8 MB: measured, but not kept in this browser. To look at them or measure again, add them again.`,
  tooLargeToKeep: 'it is over 8 MB',
  layout: {
    of: (/** @type {string} */ name) => `As ${name} reads. What you correct holds for all files.`,
    delimiter: 'Fields are parted by',
    delimiters: { tab: 'tabs', semicolon: 'semicolons', comma: 'commas', bar: 'bars', space: 'spaces' },
    decimal: 'Decimal mark',
    decimals: { point: 'point', comma: 'comma' },
    firstLine: 'First line of samples',
    step: 'From sample to sample, ns',
    table: 'Columns and first samples',
    column: 'Column',
    holds: 'Holds',
    unit: 'Unit',
    line: (/** @type {number} */ n) => `Line ${n}`,
    numbered: (/** @type {number} */ n) => `${n}`,
    roles: { time: 'time', channel_a: 'trace A', channel_b: 'trace B', ignored: 'nothing needed' },
    units: { s: 's', ms: 'ms', 'µs': 'µs', ns: 'ns', ps: 'ps', V: 'V', mV: 'mV', 1: 'none' },
    roleOf: (/** @type {string} */ name) => `What column ${name} holds`,
    unitOf: (/** @type {string} */ name) => `Unit of column ${name}`,
    supposed: 'supposed',
    settings: 'What else the file says',
  },
  estimator: 'How edges are timed',
  estimators: {
    constant_fraction: 'constant fraction: each edge at the same part of its own height',
    fixed_level: 'fixed level: both edges at the same voltage; it walks, as a smaller pulse crosses later',
    edge_line: 'line through 10 to 90 % of each edge, down to its baseline',
    cross_correlation: 'cross-correlation: the shift at which the edges are most alike',
    shift_and_scale: 'shift and scale of one edge upon the other, by least squares',
  },
  choose: 'Traces of',
  option: (/** @type {number} */ n, /** @type {string} */ name) => `row ${n}: ${name}`,
  view: 'Both traces of the row',
  viewKeys: 'Both traces; plus and minus zoom, arrows move, 0 shows the whole pulse',
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  earlier: 'Earlier',
  later: 'Later',
  reset: 'Whole pulse',
  loading: 'Reading the traces…',
  missing: (/** @type {string} */ name) =>
    `${name} is not kept in this browser, so the traces can’t be shown. What was measured counts all the same; add the file `
    + 'again to look at it.',
  takeOff: 'Take the traces off this row',
  takenOff: (/** @type {number} */ n) => `Row ${n} has no traces any more.`,
  walk: 'Fixed level less constant fraction, against distance',
};
