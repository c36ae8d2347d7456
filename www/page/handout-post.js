/**
 * Posting a hand-out, without a server: as a file, as a link that holds it, or as one HTML file with the program inside.
 */
import { core, messageOf } from './core.js';
import { download, el, setHidden, setText } from './dom.js';
import { copyText, packed, safeName } from './files.js';
import { digestOf } from './handout-in.js';
import { fragmentOf, MOST_IN_LINK } from './link.js';
import { oneFileWith } from './file-inside.js';
import { toast } from './toast.js';
import { flushAll } from './typing.js';
import { say } from './words.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */

/** How long after a change the link's length is found, ms. */
const REST = 300;

export class Posting {
  /** @param {Book} book @param {() => boolean} sealed whether the result starts sealed */
  constructor(book, sealed) {
    this.book = book;
    this.sealed = sealed;
    this.timer = 0;
    /** The count of links begun: the length of an earlier one is not told. */
    this.turn = 0;
    this.rehearsal = el('p', { class: 'problem', hidden: true }, say('handout-rehearsal'));
    this.address = el('p', { class: 'hint' });
    this.size = el('p', { id: 'post-link-size', role: 'status' });
    this.copy = el('button', { type: 'button', id: 'post-link', click: () => this.post((desk) => this.copyLink(desk)) }, say('handout-link'));
    this.made = el('p', { id: 'prepare-made', role: 'status' });
    this.root = el('fieldset', { class: 'group' }, el('legend', {}, say('handout-post')), el('p', { class: 'hint' }, say('handout-take-hint')), this.rehearsal,
      el('h4', {}, say('handout-file-title')), el('p', { class: 'hint' }, say('handout-file-hint', { open: say('notebooks-file') })), this.address,
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'prepare-take', class: 'main', click: () => this.post((desk) => this.takeFile(desk)) }, say('handout-take'))),
      el('h4', {}, say('handout-link-title')), el('p', { class: 'hint' }, say('handout-link-hint')), this.size, el('p', { class: 'actions' }, this.copy),
      el('h4', {}, say('handout-page-title')), el('p', { class: 'hint' }, say('handout-page-hint')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'post-page', click: () => this.post((desk) => this.takePage(desk)) }, say('handout-page'))),
      this.made);
  }

  /** Tells how long the link would be, once nothing changes any more; and what a rehearsal gives away. */
  show() {
    setHidden(this.rehearsal, !this.book.current().notices.some(({ id }) => id === 'rehearsal'));
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.measure(), REST);
  }

  async measure() {
    this.turn += 1;
    const turn = this.turn;
    let told;
    let fits = false;
    try {
      const desk = await this.handedOut();
      const address = isSite() ? new URL(`?open=${handOutName(desk)}.zip`, here()).href : '';
      setText(this.address, address && say('handout-address', { address }));
      setHidden(this.address, !address);
      const bytes = (await linkTo(desk)).length;
      fits = isSite() && desk.files().length === 0 && bytes <= MOST_IN_LINK;
      if (desk.files().length > 0) told = say('handout-link-files');
      else if (!isSite()) told = say('handout-link-no_site');
      else told = say(fits ? 'handout-link-size' : 'handout-link-too_long', { n: bytes, most: MOST_IN_LINK });
      desk.free();
    } catch (error) {
      told = messageOf(error);
    }
    if (turn !== this.turn) return;
    setText(this.size, told);
    this.size.className = fits ? 'hint' : 'problem';
    this.copy.disabled = !fits;
  }

  /** This notebook as it would be handed out now: the same whenever it is asked for. @returns {Promise<Desk>} */
  async handedOut() {
    const text = this.book.desk.text();
    const salt = this.sealed() ? (await reader.ask('digest', text)).slice(0, 32) : '';
    const desk = core.Desk.open(text);
    desk.hand_out(salt);
    return desk;
  }

  /** Posts it, and tells its digest. @param {(desk: Desk) => Promise<void>} work */
  async post(work) {
    flushAll();
    try {
      const desk = await this.handedOut();
      try {
        await work(desk);
        setText(this.made, say('handout-made', { digest: await digestOf(desk, desk.length()) }));
      } finally {
        desk.free();
      }
    } catch (error) {
      toast(messageOf(error));
    }
  }

  /** @param {Desk} desk */
  async takeFile(desk) {
    download(await packed(desk), 'application/zip', `${handOutName(desk)}.zip`);
  }

  /** @param {Desk} desk */
  async copyLink(desk) {
    await copyText(await linkTo(desk));
  }

  /** @param {Desk} desk */
  async takePage(desk) {
    const name = handOutName(desk);
    download(await oneFileWith(`${name}.zip`, await packed(desk)), 'text/html;charset=utf-8', `${name}.html`);
  }
}

/** Whether others can reach this page by its address. */
function isSite() {
  return location.protocol.startsWith('http');
}

/** The page's address, without what it was asked for. */
function here() {
  return location.origin + location.pathname;
}

/** @param {Desk} desk */
async function linkTo(desk) {
  return here() + await fragmentOf(desk.text());
}

/** What its files are called, without an ending. @param {Desk} desk */
function handOutName(desk) {
  return `${safeName(desk.title() || say('untitled'), 60)}-${safeName(say('handout-file'), 20)}`;
}
