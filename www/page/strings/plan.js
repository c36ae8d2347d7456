/**
 * The texts of the section Plan.
 */

export const plan = {
  title: 'Plan',
  hint: 'Before the lab: where to read, and what that will give. Type the positions, or move their handles on the '
    + 'rails by hand or with the arrow keys.',
  drawing: 'The rails to scale, with the planned positions',
  ends: (/** @type {string} */ near, /** @type {string} */ nearAt, /** @type {string} */ far,
    /** @type {string} */ farAt) => `${near} at ${nearAt}, ${far} at ${farAt}`,
  caption: 'Planned positions',
  position: 'No.',
  columns: { rail: 'Rail', reading: 'Reading', time_base: 'ns/div', repeats: 'Repeats' },
  distance: 'd',
  cell: (/** @type {string} */ column, /** @type {number} */ n) => `${column}, planned position ${n}`,
  handle: (/** @type {number} */ n) => `Planned position ${n}`,
  place: (/** @type {string} */ reading, /** @type {string} */ rail, /** @type {string} */ distance) =>
    `${reading} on rail ${rail}, ${distance} from the splitter`,
  moving: (/** @type {string} */ place, /** @type {string} */ expected) => `${place}. ${expected}`,
  expected: (/** @type {string} */ u, /** @type {string} */ rows) => `Expected: u(v)/v = ${u} from ${rows} rows.`,
  limits: (/** @type {string} */ name, /** @type {string} */ share) =>
    `What limits it: ${name} (${share} % of the variance).`,
  compared: (/** @type {string} */ planned, /** @type {string} */ rows, /** @type {string} */ achieved,
    /** @type {string} */ taken) =>
    `Expected ${planned} from ${rows} rows; achieved ${achieved} from ${taken}.`,
  turnedOut: {
    kept: 'The run keeps what the plan promised.',
    missing: 'Rows are still missing.',
    worse: 'The readings scatter more, or stand elsewhere, than was planned: compare the parts of the budget.',
  },
  warnings: {
    off_rail: (/** @type {string} */ n) => `Off the rail: position ${n}.`,
    beyond_reach: (/** @type {string} */ n) =>
      `Position ${n}: the delay is longer than a pulse period, so the next pulse comes first.`,
    off_screen: (/** @type {string} */ n) =>
      `Position ${n}: the delay finds no room on the screen at that time base.`,
    side: (/** @type {string} */ rail, /** @type {string} */ have) =>
      `Rail ${rail} has ${have} of the three positions or more that each side of a splice needs: fewer can’t show a `
      + 'step there.',
    cluster: (/** @type {string} */ length, /** @type {string} */ whole) =>
      `All positions lie within ${length} of the ${whole} there are: a short lever gives a poor slope.`,
    few: (/** @type {string} */ rows) =>
      `Planned rows: ${rows}. With fewer than 5 little is left to judge the scatter by.`,
  },
  add: 'Plan a position',
  remove: (/** @type {number} */ n) => `Remove planned position ${n}`,
  removed: (/** @type {string} */ n) => `Position ${n} was removed.`,
  take: 'Take the plan into the readings',
  taken: 'The planned rows stand in the readings.',
  offers: {
    spread: (/** @type {string} */ rows, /** @type {string} */ u) =>
      `${rows} rows spread over all rails, where bends and splices can be tested: u(v)/v = ${u}.`,
    ends: (/** @type {string} */ rows, /** @type {string} */ u) =>
      `${rows} rows, half of them at either end, the longest lever, blind to bends and splices: u(v)/v = ${u}.`,
  },
  use: 'Plan these',
  planned: 'These positions are planned now.',
  next: 'The next reading',
  effect: (/** @type {string} */ before, /** @type {string} */ after) => `: u(v)/v from ${before} to ${after}`,
  reasons: {
    first: () => 'A line needs two places, the farther apart the better.',
    little: () => 'No single reading helps much any more: look at what limits the whole.',
    lever: (/** @type {string} */ arm) =>
      `Of all places this one lowers it most: ${arm} from the middle of the others, it turns the line most.`,
    side: (/** @type {string} */ have) =>
      `Positions on this rail: ${have}. With three or more the step at its splice can be tested.`,
    gap: (/** @type {string} */ gap) => `The nearest reading is ${gap} away: a bend or a step could hide there.`,
  },
  addRow: 'Add this row',
  addToPlan: 'Add to the plan',
  figuresTitle: 'What to expect',
  figures: {
    expected: { name: 'expected uncertainty of v', symbol: 'u(v)/v', source: 'ISO/TS 28037:2010, clauses 9 and 10',
      meaning: 'The engine that analyses the readings is asked before there are any: weights hang on what is stated '
        + 'and on where rows stand, not on what they read.' },
    reading: { name: 'of this, from reading', symbol: 'u_r', source: 'ISO/TS 28037:2010, clauses 6 and 7',
      meaning: 'Each row has its own: repeats and a longer lever reduce it. The formula is that of rows which are all '
        + 'alike and share nothing.' },
    shared: { name: 'of this, shared by rows', symbol: 'u_s', source: '',
      meaning: 'Splices, scales, time bases, the beam, at the weights of this plan.' },
    floor: { name: 'what no repeat can buy', symbol: '', source: '',
      meaning: 'However often all is read, what rows share stays. Better splices, scales or time bases lower it.' },
    again: { name: 'with one more repeat of each position', symbol: '', source: '',
      meaning: 'A repeat is a row of its own: the carriage is set anew.' },
    rail: { name: 'with one more rail like the last', symbol: '', source: '',
      meaning: 'Joined as well as the last one, with positions as on it.' },
    faster: { name: 'with a time base twice as fast', symbol: '', source: '',
      meaning: 'Half the time per division wherever the delay still finds room on the screen.' },
    achieved: { name: 'achieved so far', symbol: 'u(v)/v', source: '', meaning: 'What the readings gave, by the budget.' },
    reach: { name: 'farthest distance that the pulse rate allows', symbol: 'd_max', source: '',
      meaning: 'There the delay is one pulse period: beyond it the next pulse comes first.' },
    step: { name: 'shortest step that the screen tells apart', symbol: 'Δd', source: 'common practice',
      meaning: 'Nearer places give delays that differ by less than twice the standard uncertainty of the difference, '
        + 'at the fastest time base planned.' },
  },
  fasterRows: (/** @type {string} */ u, /** @type {string} */ rows) => `${u} (${rows} rows)`,
  noneFaster: 'no delay finds room then',
  rehearsal: 'Rehearsal',
  rehearsalHint: 'Practise the whole lab: a new notebook with this bench and plan, whose readings are simulated '
    + 'with errors as you stated them. What was so is told when you ask.',
  rehearse: 'Rehearse',
  rehearsalOf: (/** @type {string} */ title) => `Rehearsal: ${title}`,
  rehearsing: 'This is the rehearsal, a notebook of its own. Its readings are simulated.',
  showTruth: 'Show what was so',
  truth: { c: 'speed of light in vacuum', t0: 'delay at zero distance' },
  stated: (/** @type {string} */ value, /** @type {string} */ u) => (u ? `${value} (stated: u = ${u})` : value),
};
