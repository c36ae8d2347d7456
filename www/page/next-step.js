/**
 * What comes next in a notebook without readings, and a way there: the cautions, the rails and where they lie, the first row.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { reveal } from './leaves.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class NextStep {
  /** @param {Book} book */
  constructor(book) {
    this.place = byId('next-step');
    this.text = el('span', { role: 'status' });
    /** The id of what it leads to. */
    this.to = '';
    this.go = el('button', { type: 'button', class: 'main', click: () => {
      // What it leads to may stand on a leaf that is yet to be drawn.
      book.current();
      book.drawParts(true);
      this.lead();
    } });
    this.place.append(this.text, ' ', this.go);
    this.show(book.current());
  }

  /** @param {View} view */
  show(view) {
    setHidden(this.place, view.rows.length > 0);
    const [step, to] = next(view);
    this.to = to;
    setText(this.text, say(`next-${step}`));
    setText(this.go, say(`next-go-${step}`));
  }

  lead() {
    const place = byId(this.to);
    reveal(place);
    // What is to be read from its first line begins at the head of the window; it may have been in sight already.
    place.scrollIntoView({ block: place.id === 'cautions-summary' ? 'start' : 'center' });
    place.focus({ preventScroll: true });
  }
}

/**
 * The next step, and the id of where it is done.
 * @param {View} view
 * @returns {[step: 'cautions' | 'rail' | 'place' | 'row', to: string]}
 */
function next({ cautions, rails }) {
  if (cautions.read.length === 0) return ['cautions', 'cautions-summary'];
  if (rails.length === 0) return ['rail', 'add-rail'];
  const unplaced = rails.find(({ stands }) => stands === null);
  return unplaced ? ['place', `rail-${unplaced.id}-name`] : ['row', 'cell-new-rail'];
}
