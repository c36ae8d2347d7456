/**
 * Many links or buttons one below the other, of which Tab comes to one alone, the last that had the focus; the arrow keys go
 * from one to the next, Home and End to the first and the last.
 */

export class Roving {
  /** @param {HTMLElement} root what holds them @param {'a' | 'button'} kind what they are */
  constructor(root, kind) {
    this.root = root;
    this.kind = kind;
    root.addEventListener('focusin', ({ target }) => this.hold(target));
    root.addEventListener('keydown', (event) => this.pressed(event));
  }

  all() {
    return [...this.root.querySelectorAll(this.kind)];
  }

  /** After some came or went: Tab finds one. */
  settle() {
    const all = this.all();
    if (all.filter(({ tabIndex }) => tabIndex === 0).length !== 1) this.hold(all[0]);
  }

  /** @param {EventTarget | null | undefined} one */
  hold(one) {
    for (const each of this.all()) each.tabIndex = each === one ? 0 : -1;
  }

  /** @param {KeyboardEvent} event */
  pressed(event) {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const all = this.all();
    const place = all.findIndex((one) => one === event.target);
    const to = { ArrowUp: place - 1, ArrowDown: place + 1, Home: 0, End: all.length - 1 }[event.key];
    if (place < 0 || to === undefined) return;
    event.preventDefault();
    all[to]?.focus();
  }
}
