/**
 * A photograph of the set-up, beside what is written of the instruments. It is kept with the notebook as those of screens are.
 */
import { messageOf } from './core.js';
import { el, setHidden, setText } from './dom.js';
import { evidence } from './evidence.js';
import { filePicker } from './file-picker.js';
import { keptFile } from './file-store.js';
import { keepPicture } from './picture-intake.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class SetUpPhoto {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** The notebook of which something is said. */
    this.desk = book.desk;
    /** The SHA-256 of the one shown. @type {string | undefined} */
    this.shown = undefined;
    this.image = el('img', { class: 'set-up', alt: '', hidden: true });
    this.state = el('p', { class: 'hint', role: 'status' });
    this.remove = el('button', { type: 'button', class: 'quiet', hidden: true, click: () => this.takeAway() }, say('photo-remove'));
    this.root = el('div', { class: 'wide' }, el('p', { class: 'actions' },
      filePicker(say('photo-add'), { id: 'set-up-photo', accept: 'image/*', multiple: false }, ([file]) => void this.take(file)), this.remove),
      this.state, this.image);
  }

  /** @param {File | undefined} file */
  async take(file) {
    if (!file) return;
    const { desk } = this.book;
    setText(this.state, say('photo-coming', { name: file.name }));
    try {
      const { stored, lasts } = await keepPicture(evidence, file);
      // Another notebook may have been opened meanwhile.
      const taken = this.book.desk === desk && this.book.edit({ set_photo: stored });
      const here = lasts ? '' : say('only-here');
      setText(this.state, this.book.desk === desk ? taken ? here : '' : say('files-other-notebook'));
    } catch (error) {
      setText(this.state, messageOf(error));
    }
  }

  takeAway() {
    if (this.book.edit({ set_photo: null })) this.book.onUndoable(say('photo-removed'));
  }

  /** @param {View} view */
  show({ photo }) {
    const isOther = this.desk !== this.book.desk;
    this.desk = this.book.desk;
    if (isOther) setText(this.state, '');
    setHidden(this.remove, !photo);
    if (photo?.sha256 === this.shown && !isOther) return;
    this.shown = photo?.sha256;
    void this.bring(photo);
  }

  /** @param {View['photo']} photo */
  async bring(photo) {
    const kept = photo ? await keptFile(photo.sha256).catch(() => undefined) : undefined;
    // Another may have come meanwhile.
    if (this.shown !== photo?.sha256) return;
    URL.revokeObjectURL(this.image.src);
    setHidden(this.image, !kept);
    this.image.alt = photo ? say('photo-of', { name: photo.name }) : '';
    if (kept) this.image.src = URL.createObjectURL(kept.blob);
    else this.image.removeAttribute('src');
    if (photo && !kept) setText(this.state, say('photo-missing', { name: photo.name }));
    else if (!photo) setText(this.state, '');
  }
}
