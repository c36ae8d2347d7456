/**
 * A frame of a video as a photo: one looks for a place in the video, and what is shown there goes the way of a photo.
 * The browser decodes the video where it lies; nothing of it is kept but the frames that are taken.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { isVideo } from './incoming.js';
import { reveal } from './leaves.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */

/** From one place to the next, s: shorter than most frames last (common practice, no source: 25 to 30 a second). */
const STEP = 0.02;
/** Beyond the end of any video, s: there a browser finds out how long one is that does not say so. */
const FAR = 1e7;

/** A video that waits to be looked through; `into`: the row for its first frame. @typedef {{file: File, into: number | undefined}} Film */

export class VideoFrames {
  /** @param {Book} book @param {{take: (files: File[], into: number | undefined) => void, refuse: () => void}} does `refuse`: tells what is broken */
  constructor(book, { take, refuse }) {
    this.book = book;
    this.take = take;
    this.refuse = refuse;
    /** @type {Film[]} */
    this.waiting = [];
    /** Why some of those that came last can't be shown. @type {string[]} */
    this.broken = [];
    /** The one that is looked through. @type {Film | undefined} */
    this.film = undefined;
    const button = (/** @type {string} */ id, /** @type {string} */ text, /** @type {() => void} */ work, kind = '') => (
      el('button', { type: 'button', id, class: kind, click: work }, text));
    this.title = el('p', { class: 'plot-words', id: 'video-title' });
    this.video = el('video', {
      muted: true, playsinline: true, preload: 'auto', 'aria-labelledby': 'video-title',
      loadedmetadata: () => this.measure(), durationchange: () => this.measure(), seeked: () => this.arrive(), error: () => this.fail(),
    });
    this.slider = el('input', { type: 'range', id: 'video-place', min: '0', step: String(STEP), disabled: true,
      'aria-label': say('video-place'), input: () => this.go(Number(this.slider.value)) });
    this.place = el('span');
    this.root = el('div', { class: 'video-frames', role: 'group', 'aria-labelledby': 'video-title', hidden: true }, this.title, this.video,
      el('p', { class: 'actions' }, this.slider, this.place,
        button('video-earlier', say('video-earlier'), () => this.go(this.video.currentTime - STEP)),
        button('video-later', say('video-later'), () => this.go(this.video.currentTime + STEP))),
      el('p', { class: 'actions' }, button('video-use', say('video-use'), () => void this.use(), 'main'),
        button('video-done', say('video-done'), () => this.finish())));
  }

  /**
   * Sets videos aside, to be looked through one after the other.
   * @param {File[]} files
   * @param {number | undefined} into the row for the first of them
   * @returns {File[]} those that are none
   */
  setAside(files, into) {
    if (!this.film) this.broken = [];
    const videos = files.filter((file) => isVideo(file));
    // Among several it is not told which of them the row was meant for.
    this.waiting.push(...videos.map((file) => ({ file, into: files.length === 1 ? into : undefined })));
    if (videos.length > 0 && !this.film) this.next();
    return files.filter((file) => !videos.includes(file));
  }

  /** Lets all videos go. */
  clear() {
    this.waiting = [];
    this.broken = [];
    this.next();
  }

  /** Goes on from a video that was looked through; the focus does not stay on what is hidden. */
  finish() {
    this.next();
    if (!this.film) byId('picture-files').focus();
  }

  /** Goes on to the next video, if one waits. */
  next() {
    URL.revokeObjectURL(this.video.src);
    this.slider.disabled = true;
    setText(this.place, '');
    this.film = this.waiting.shift();
    setHidden(this.root, !this.film);
    if (!this.film) {
      this.video.removeAttribute('src');
      this.video.load();
      return;
    }
    const { file } = this.film;
    setText(this.title, say('video-title', { name: file.name }));
    this.video.src = URL.createObjectURL(file);
    reveal(this.root);
    this.root.scrollIntoView({ block: 'nearest' });
  }

  /** Takes the length of the video, which some tell only once their end was looked for. */
  measure() {
    const { duration } = this.video;
    if (duration === Infinity) this.video.currentTime = FAR;
    if (!Number.isFinite(duration)) return;
    this.slider.max = String(duration);
    if (!this.slider.disabled) return;
    this.slider.disabled = false;
    this.go(0);
  }

  /** @param {number} time s */
  go(time) {
    if (!this.slider.disabled) this.video.currentTime = Math.min(Math.max(time, 0), this.video.duration);
  }

  /** Tells which place is shown. */
  arrive() {
    if (this.slider.disabled) return;
    this.slider.value = String(this.video.currentTime);
    const place = say('video-at', { time: this.time() });
    this.slider.setAttribute('aria-valuetext', place);
    setText(this.place, place);
  }

  /** Which place is shown, s, to a thousandth. */
  time() {
    return this.book.desk.number_text(Math.round(this.video.currentTime * 1000) / 1000);
  }

  /** Has the frame that is shown taken in as a photo. */
  async use() {
    const { film, video } = this;
    if (!film || this.slider.disabled) return;
    if (video.seeking) await new Promise((done) => { video.addEventListener('seeked', done, { once: true }); });
    const canvas = el('canvas', { width: String(video.videoWidth), height: String(video.videoHeight) });
    canvas.getContext('2d')?.drawImage(video, 0, 0);
    const stem = film.file.name.replace(/\.[a-z]\w*$/i, '');
    const name = `${stem} ${this.time()} s.png`;
    /** @type {Blob | null} */
    const frame = await new Promise((done) => { canvas.toBlob(done, 'image/png'); });
    if (film !== this.film) return;
    if (!frame) {
      this.fail();
      return;
    }
    const { into } = film;
    film.into = undefined;
    this.take([new File([frame], name, { type: frame.type })], into);
  }

  /** The browser can't show the video. */
  fail() {
    if (!this.film) return;
    this.broken.push(say('video-broken', { name: this.film.file.name }));
    this.refuse();
    this.next();
  }
}
