/**
 * The texts about the bench: cautions, what stands on it, what is stated of it.
 */

export const benchTexts = {
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
      at_distance: 'a mark at a stated distance',
      joined: 'marks that meet',
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
};
