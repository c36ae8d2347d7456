/**
 * The section Result: c and what it rests on, its seal, sentences for a report, and the claimed uncertainty.
 */
import { byId, el, Keyed, setHidden, setOptional } from './dom.js';
import { Radios, TextField, plain } from './field.js';
import { Figures } from './figures.js';
import { NoticeList, ofSection, setRefusal } from './notices.js';
import { copyText } from './files.js';
import { Seal } from './seal.js';
import { each, inWords, say, setTold } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Basis, Message, View } from './types.js' */

export class Result {
  /** @param {Book} book */
  constructor(book) {
    this.seal = new Seal(book);
    this.notices = new NoticeList(book, byId('result-notices'), ofSection('result'));
    this.refusal = byId('result-refusal');
    this.short = byId('result-short');
    this.figures = new Figures(byId('result-figures'));
    this.sentencesBox = byId('sentences-box');
    this.list = new Keyed(byId('result-sentences'), (/** @type {{key: string, told: Message}} */ item) => item.key, () => {
      const root = el('p');
      return { root, show: (/** @type {{told: Message}} */ item) => setTold(root, item.told) };
    });
    byId('copy-sentences').addEventListener('click', () => copyText(inWords(book.view.result.sentences)));
    this.claim = { basis: /** @type {Basis} */ ('stated'), reason: '' };
    const send = (/** @type {Partial<typeof this.claim>} */ change) => {
      this.claim = { ...this.claim, ...change };
      book.edit({ set_claim: this.claim });
    };
    this.choice = byId('choice');
    this.choiceText = byId('choice-text');
    this.basis = new Radios({
      name: 'basis',
      legend: say('result-choice'),
      options: each(['stated', 'scatter'], (key) => say(`result-bases-${key}`)),
    }, (basis) => send({ basis }));
    this.reason = new TextField({ id: 'basis-reason', label: say('result-reason'), prose: true, wide: true },
      (reason) => send({ reason }));
    this.choice.append(this.basis.root, this.reason.root);
  }

  /** @param {View} view */
  show(view) {
    const { line, result } = view;
    this.seal.show(view);
    this.notices.show(view);
    setRefusal(this.refusal, result.refusal, { line: line.refusal });
    setOptional(this.short, result.short);
    this.figures.show(result.figures);
    const sentences = result.sentences.map((told, index) => ({ key: String(index), told }));
    this.list.show(sentences);
    setHidden(this.sentencesBox, sentences.length === 0);
    this.claim = { basis: result.basis, reason: result.reason };
    setTold(this.choiceText, result.choice);
    this.basis.show(result.basis);
    this.reason.show(plain(result.reason));
    setHidden(this.choice, result.choice === null && result.basis === 'stated' && result.reason === '');
  }
}
