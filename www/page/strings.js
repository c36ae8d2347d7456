/**
 * Every text of the page, in one table: another language is another table like this one.
 */

export const words = {
  app: 'Slope of Light',
  skip: 'Go to the readings',
  outline: 'Outline',
  untitled: 'Untitled notebook',
  loading: 'Opening the notebook…',
  noCore: 'The notebook could not start.',

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
    noJournal:
      'This browser gives the page no place to keep your work: nothing is saved here. Take the bundle before '
      + 'you close the page.',
    full:
      'The browser’s storage is full. Everything saved so far is kept, but your last changes are not. Take the '
      + 'bundle now; deleting notebooks you no longer need makes room.',
    failed: (/** @type {string} */ why) =>
      `Your last changes could not be saved (${why}). Take the bundle now, then open the page again.`,
    shelfFull:
      'The browser’s storage is nearly full. Your work is still saved edit by edit; deleting notebooks you no '
      + 'longer need makes room.',
    otherTab: 'This notebook is being written in another tab. You are reading along here.',
    takeOver: 'Write here instead',
    elsewhere: 'Another tab writes in this notebook now. You are reading along here.',
    aside: (/** @type {number} */ n) =>
      `${n} later changes of this notebook don’t follow on from what is stored, so they were set aside, not lost.`,
    takeBundle: 'Take the bundle',
    dismiss: 'Close this message',
    cannotOpen: (/** @type {string} */ title, /** @type {string} */ why) =>
      `“${title}” can’t be opened and was left as it is: ${why}`,
  },

  cautions: {
    title: 'Cautions',
    lead: 'Read these before the beam is on. The word of your local laser safety officer and your local code stand '
      + 'above everything on this page. This page computes no safe exposure.',
    items: [
      'One pulse of ultraviolet, visible or infrared laser light can blind, also by a reflection. Ultraviolet '
        + 'also harms the skin. An invisible beam gives no warning.',
      'Wear eyewear rated for the wavelength in use. Take off rings and watches.',
      'Keep the beam path closed, matt, and below eye level, with a beam stop behind the last rail.',
      'Move carriages only with the shutter closed. Look at ultraviolet only by way of a fluorescing card.',
      'A pulse supply holds a lethal charge after it is switched off. Leave its housing closed.',
      'Laser classes and the controls they call for: IEC 60825-1 and the rules of your place.',
    ],
    summary: 'What to know before the beam is on',
    read: 'I have read them',
  },

  apparatus: {
    title: 'Apparatus',
    carriage: 'Carriage',
    path: 'The carriage carries',
    paths: { detector: 'detector B (the light goes along the rail once)',
      mirror: 'a mirror (the light goes there and back)' },
    source: 'Source',
    screen: 'Screen',
    air: 'Air',
    airHint: 'Air slows the pulse by about 3 parts in 10 000. Leave these empty if you did not read them.',
    drawing: 'The bench, to scale',
    fields: {
      wavelength: 'Wavelength in vacuum',
      pulse_rate: 'Pulse rate',
      beam_angle: 'Beam against the rail, at most ±',
      small_divisions: 'Small divisions in one division',
      edge_half_width: 'An edge is read to within ±',
      edge_reason: 'Why that width',
      screen_width: 'Divisions across the screen',
      time_base_uncertainty: 'Time base: relative uncertainty',
      temperature: 'Temperature',
      pressure: 'Pressure',
      humidity: 'Relative humidity',
      carbon_dioxide: 'Carbon dioxide',
    },
  },

  bench: {
    rail: (/** @type {string} */ name, /** @type {string} */ stands, /** @type {number} */ rows) =>
      `${name} (${rows === 1 ? '1 row' : `${rows} rows`}): ${stands || 'its place is not known yet.'}`,
  },

  rails: {
    title: 'Rails',
    hint: 'From the splitter outwards. Each ruler counts from its own end; the splice says where the rail stands.',
    add: 'Add a rail',
    remove: 'Remove this rail',
    removed: (/** @type {string} */ name) => `${name} was removed. Its rows keep what was typed.`,
    numbered: (/** @type {number} */ n) => `Rail ${n}`,
    legend: (/** @type {number} */ n, /** @type {string} */ name) => (name ? `Rail ${n}: ${name}` : `Rail ${n}`),
    fields: {
      name: 'Name in the readings',
      from: 'First mark',
      to: 'Last mark',
      reading_uncertainty: 'Uncertainty of a reading',
      scale_uncertainty: 'Relative uncertainty of the scale',
    },
    unit: 'Ruler counts in',
    units: { millimetre: 'millimetres', centimetre: 'centimetres', metre: 'metres', inch: 'inches' },
    sense: 'Moving away, readings',
    senses: { grows: 'grow', falls: 'fall' },
    more: 'Ruler’s scale',
  },

  splice: {
    legend: 'Where it stands',
    kind: 'Known from',
    kinds: {
      unsaid: 'not said yet',
      at_splitter: 'the mark at the splitter',
      stated: 'a mark at a stated distance',
      meeting: 'marks that meet',
      overlap: 'positions read on both rails',
      free: 'nothing: let the line find it',
    },
    mark: 'Mark on this rail',
    markAtSplitter: 'Mark at the splitter',
    distance: 'Its distance from the splitter',
    mark_before: 'Meets this mark on the rail before',
    gap: 'Gap between them',
    uncertainty: 'Standard uncertainty',
    here: (/** @type {number} */ n) => `Position ${n}, on this rail`,
    before: (/** @type {number} */ n) => `Position ${n}, on the rail before`,
    addPair: 'Add a position',
    removePair: (/** @type {number} */ n) => `Remove position ${n}`,
  },

  settings: {
    title: 'Time base settings',
    hint: 'Only where a setting has an uncertainty of its own. Rows of one setting share its error.',
    add: 'Add a setting',
    remove: 'Remove',
    legend: (/** @type {number} */ n) => `Setting ${n}`,
    time: 'Time per division',
    uncertainty: 'Relative uncertainty',
  },

  shared: {
    title: 'Other errors',
    hint: 'For an error that no rail and no setting accounts for. One that rows share moves them all together; one '
      + 'that is each row’s own scatters them.',
    add: 'Add an error',
    remove: 'Remove',
    legend: (/** @type {number} */ n) => `Error ${n}`,
    name: 'What it is',
    actsOn: 'Acts on',
    acts: { distances: 'distances', delays: 'delays' },
    effect: 'As',
    effects: {
      offset: 'the same amount on each', scale: 'the same fraction of each', noise: 'an amount of its own on each',
    },
    rows: 'On',
    all: 'all rows',
    rail: (/** @type {string} */ name) => `rows on ${name}`,
    timeBase: (/** @type {string} */ text) => `rows at ${text} ns per division`,
    chosen: 'chosen rows',
    which: 'Chosen rows',
    uncertainty: 'Standard uncertainty',
    shape: 'Its distribution',
    shapes: {
      normal: 'normal', rectangular: 'rectangular', triangular: 'triangular', arcsine: 'arcsine', student: 'Student’s t',
    },
    freedom: 'Degrees of freedom',
  },

  plan: {
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
  },

  readings: {
    title: 'Readings',
    hint: 'One row for each carriage position. Enter goes to the next row, Tab to the next cell. '
      + 'A block copied from a spreadsheet can be pasted into any cell.',
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
    newCell: (/** @type {string} */ column) => `${column}, new row`,
    cell: (/** @type {string} */ column, /** @type {number} */ n) => `${column}, row ${n}`,
    struck: (/** @type {string} */ reason) => `Struck out: ${reason}`,
    problem: (/** @type {string} */ column, /** @type {string} */ problem) => `${column}: ${problem}`,
  },

  delays: {
    title: 'Delays',
    hint: 'Where the delay of a row comes from, if it is not typed: a photograph of the screen, or recorded traces.',
    fields: { mark_uncertainty: 'A mark on a picture: standard uncertainty' },
    from: { picture: 'picture', traces: 'traces' },
    jump: {
      picture: (/** @type {number} */ n) => `Show the picture of row ${n}`,
      traces: (/** @type {number} */ n) => `Show the traces of row ${n}`,
    },
  },

  pictures: {
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
    notKept: (/** @type {string} */ name, /** @type {string} */ why) =>
      `${name}: the browser could not keep the picture (${why}). Try again.`,
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
    accepted: (/** @type {number} */ n) => `Row ${n} is marked.`,
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
    notInBundle: (/** @type {number} */ n) =>
      (n === 1 ? 'One picture is not kept in this browser: the bundle holds its marks only.'
        : `${n} pictures are not kept in this browser: the bundle holds their marks only.`),
    onlyHere: 'This browser keeps no files: the pictures last until the page is closed. Take the bundle before.',
  },

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
      too_many: () => 'More than 2,000 files at once are not taken. Add them in parts, such as a folder for each rail.',
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
    busy: 'That notebook is being written in another tab. Close it there first.',
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
 * The text at a path such as "strip.undo".
 * @param {string} path
 * @returns {string}
 */
export function at(path) {
  /** @type {any} */
  let value = words;
  for (const name of path.split('.')) value = value?.[name];
  return typeof value === 'string' ? value : path;
}
