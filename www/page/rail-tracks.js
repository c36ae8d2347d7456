/**
 * The rails to scale, each as a track of its own, with a handle for each planned position. A handle is moved by hand or
 * by the keys; while it moves, what would be expected is told, and when it is let go the notebook takes one edit.
 */
import { el, Keyed, setAttribute, setText } from './dom.js';
import { placeText } from './planned.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { TrackView, PlaceView, PlanView, ProposedView } from './types.js' */

/** Steps that a key goes outwards. @type {Record<string, number>} */
const STEPS = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 };
/** Places that a key goes to. @type {Record<string, number>} */
const SHARES = { Home: 0, End: 1 };

/** @typedef {(position: number, reading: string) => void} SendReading */
/** @typedef {{id: number, number: number, place: PlaceView}} HeldPosition */

export class RailTracks {
  /**
   * @param {HTMLElement} root
   * @param {HTMLElement} told where it is said what would be expected
   * @param {Book} book
   * @param {SendReading} send
   */
  constructor(root, told, book, send) {
    this.told = told;
    this.tracks = new Keyed(root, (/** @type {TrackView} */ track) => String(track.rail),
      () => new RailTrack(book, send, (text) => setText(told, text)));
  }

  /** @param {PlanView} plan */
  show({ tracks, positions }) {
    this.tracks.show(tracks);
    const held = positions.flatMap(({ typed, place }, index) => (place ? [{ id: typed.id, number: index + 1, place }] : []));
    for (const { rail } of tracks) {
      this.tracks.parts.get(String(rail))?.hold(held.filter(({ place }) => place.track === rail));
    }
    // What a handle in hand tells stays.
    if (![...this.tracks.parts.values()].some((track) => track.isMoving())) setText(this.told, '');
  }
}

class RailTrack {
  /**
   * @param {Book} book
   * @param {SendReading} send
   * @param {(text: string) => void} say
   */
  constructor(book, send, say) {
    this.name = el('span');
    this.ends = el('span', { class: 'hint' });
    this.rail = el('div', { class: 'track-rail' });
    this.taken = el('span', { 'aria-hidden': 'true' });
    const handles = el('div', { class: 'handles' });
    this.rail.append(this.taken, handles);
    this.handles = new Keyed(handles, (/** @type {HeldPosition} */ { id }) => String(id),
      ({ id }) => new Handle(book, id, this.rail, send, say));
    this.root = el('div', { class: 'rail-track' }, el('p', {}, this.name, ' ', this.ends), el('div', { class: 'track' }, this.rail));
  }

  /** @param {TrackView} track */
  show({ name, from, length, ends, taken }) {
    setText(this.name, name);
    const [near = '', nearAt = '', far = '', farAt = ''] = ends;
    setText(this.ends, say('plan-ends', { near, nearAt, far, farAt }));
    // Set as properties: the page's policy allows no style attribute.
    this.rail.style.insetInlineStart = from;
    this.rail.style.inlineSize = length;
    this.taken.replaceChildren(...taken.map((at) => {
      const dot = el('i', { class: 'taken' });
      dot.style.insetInlineStart = at;
      return dot;
    }));
  }

  /** @param {HeldPosition[]} positions */
  hold(positions) {
    this.handles.show(positions);
  }

  isMoving() {
    return [...this.handles.parts.values()].some((handle) => handle.moved !== undefined);
  }
}

class Handle {
  /**
   * @param {Book} book
   * @param {number} id of the position
   * @param {HTMLElement} rail
   * @param {SendReading} send
   * @param {(text: string) => void} say
   */
  constructor(book, id, rail, send, say) {
    this.desk = () => book.desk;
    this.id = id;
    this.rail = rail;
    this.send = send;
    this.say = say;
    /** Steps gone by keys that are still held. */
    this.steps = 0;
    /** Where it was moved to, not taken into the notebook yet. @type {PlaceView | undefined} */
    this.moved = undefined;
    this.frame = 0;
    this.root = el('button', {
      type: 'button', class: 'handle', role: 'slider', id: `handle-${id}`, 'aria-valuemin': '0', 'aria-valuemax': '1000',
      pointerdown: (event) => this.seize(event),
      pointermove: (event) => this.drag(event),
      pointerup: () => this.letGo(),
      pointercancel: () => this.giveUp(),
      keydown: (event) => this.press(event),
      keyup: (event) => { if (event.key in STEPS || event.key in SHARES) this.letGo(); },
      blur: () => this.letGo(),
    });
  }

  /** @param {HeldPosition} held */
  show(held) {
    this.held = held;
    if (this.moved) return;
    setText(this.root, String(held.number));
    setAttribute(this.root, 'aria-label', say('plan-handle', { n: held.number }));
    this.stand(held.place);
  }

  /** @param {PlaceView} place */
  stand(place) {
    this.root.style.insetInlineStart = place.at;
    setAttribute(this.root, 'aria-valuenow', place.thousandths);
    setAttribute(this.root, 'aria-valuetext', placeText(place));
  }

  /** @param {ProposedView} move */
  move({ said, lacks, places: [first] }) {
    if (!first) return;
    const [place] = first;
    this.moved = place;
    this.stand(place);
    this.say(say('plan-moving', { place: placeText(place), expected: tell(lacks ?? said) }));
  }

  /** @param {PointerEvent} event */
  seize(event) {
    if (event.button !== 0) return;
    this.root.setPointerCapture(event.pointerId);
    // From where it was seized, so that it does not jump.
    this.apart = event.clientX - this.middle();
  }

  middle() {
    const { left, width } = this.root.getBoundingClientRect();
    return left + width / 2;
  }

  /** @param {PointerEvent} event */
  drag(event) {
    if (this.apart === undefined || !this.root.hasPointerCapture(event.pointerId)) return;
    const { left, width } = this.rail.getBoundingClientRect();
    const share = (event.clientX - this.apart - left) / width;
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.move(this.desk().at_share(this.id, share)));
  }

  /** @param {KeyboardEvent} event */
  press(event) {
    const { key } = event;
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (key === 'Escape' && this.moved) return this.giveUp();
    const steps = STEPS[key];
    const share = SHARES[key];
    if (steps === undefined && share === undefined) return;
    event.preventDefault();
    if (steps !== undefined) {
      this.steps += steps;
      this.move(this.desk().at_steps(this.id, this.steps));
    } else if (share !== undefined) {
      this.move(this.desk().at_share(this.id, share));
    }
  }

  /** Takes the place it was moved to into the notebook. */
  letGo() {
    const { moved } = this;
    this.end();
    if (moved) this.send(this.id, moved.reading);
  }

  /** Goes back to where it was. */
  giveUp() {
    this.end();
    if (this.held) this.show(this.held);
    this.say('');
  }

  end() {
    cancelAnimationFrame(this.frame);
    this.moved = undefined;
    this.apart = undefined;
    this.steps = 0;
  }
}
