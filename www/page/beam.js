/**
 * How a beam that makes an angle with the rails reaches the carriage: asked once an angle is stated, with a drawing of each
 * answer.
 */
import { el, setHidden } from './dom.js';
import { Radios } from './field.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Beam, View } from './types.js' */

const SPACE = 'http://www.w3.org/2000/svg';
/** The strokes of each drawing, above the rail: the beam, what is at a right angle to it or to the rail, the detector.
 * @type {Record<Beam, {beam: string, across: string, detector: string}>} */
const STROKES = {
  wide: { beam: 'M8 47 116 17M20 57 128 27M-4 37 104 7', across: 'M102 17 113 58', detector: 'M109 51h8v8h-8z' },
  followed: { beam: 'M8 56 112 27', across: 'M112 55V27', detector: 'M108 20h8v8h-8z' },
};

export class BeamChoice {
  /** @param {Book} book */
  constructor(book) {
    this.radios = new Radios({
      name: 'beam',
      legend: say('apparatus-beam'),
      options: each(/** @type {Beam[]} */ (['wide', 'followed']), (beam) => say(`apparatus-beams-${beam}`)),
    }, (value) => {
      book.edit({ set_beam: value });
    });
    this.root = this.radios.root;
    this.root.classList.add('wide');
    for (const [beam, box] of this.radios.boxes) box.parentElement?.append(drawing(STROKES[/** @type {Beam} */ (beam)]));
    this.root.append(el('p', { class: 'hint' }, say('apparatus-beam-hint')));
  }

  /** @param {View} view */
  show({ beam, bench }) {
    setHidden(this.root, bench.beam_angle.text === '');
    this.radios.show(beam);
  }
}

/** @param {{beam: string, across: string, detector: string}} strokes */
function drawing({ beam, across, detector }) {
  const root = document.createElementNS(SPACE, 'svg');
  root.setAttribute('viewBox', '0 0 128 64');
  root.setAttribute('class', 'beam-drawing');
  root.setAttribute('aria-hidden', 'true');
  for (const [part, stroke] of Object.entries({ rail: 'M8 56H120', across, beam, detector })) {
    const path = document.createElementNS(SPACE, 'path');
    path.setAttribute('class', part);
    path.setAttribute('d', stroke);
    root.append(path);
  }
  return root;
}
