/**
 * Where the page begins: starts the core, puts the parts together, opens the notebook.
 */
import { Banner } from './banner.js';
import { Book, now } from './book.js';
import { Charts } from './charts.js';
import { begin, core, demoText, messageOf } from './core.js';
import { aMoment, byId, setHidden } from './dom.js';
import { putHelp } from './help.js';
import { EvidenceWorker } from './worker-slot.js';
import { listenForFiles } from './incoming.js';
import { Journal, newId } from './journal.js';
import { Keeper } from './keeper.js';
import { lateScript } from './late-script.js';
import { LateSection } from './late-section.js';
import { goBack, isUp, turnTo, watchLeaves } from './leaves.js';
import { Notebooks } from './notebooks.js';
import { keepOffline } from './offline.js';
import { Preferences, recall } from './preferences.js';
import { Readings } from './readings.js';
import { Shelf, openHere, rememberOpen } from './shelf.js';
import { inWords, loadWords, putWords, say } from './words.js';
import { Strip } from './strip.js';
import { sweepSoon } from './sweep.js';
import { Tabs } from './tabs.js';
import { toast } from './toast.js';
import { flushAll } from './typing.js';
import { undo } from './undone.js';

/** @import { Part } from './book.js' */
/** @import { ClassSection } from './class.js' */
/** @import { Takers } from './incoming.js' */
/** @import { SectionId } from './late-section.js' */
/** @import { Loaded } from './shelf.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @typedef {typeof import('./late-sections.js')} LateScripts */

class Page {
  /** @param {Book} book @param {Journal | undefined} journal */
  constructor(book, journal) {
    this.book = book;
    this.shelf = new Shelf(journal);
    this.keeper = new Keeper(this.book, this.shelf, journal);
    this.tabs = new Tabs(journal);
    this.banner = new Banner({
      takeBundle: () => this.report.ask(() => byId('take-bundle').click()),
      takeOver: () => this.tabs.takeOver(),
      tryAgain: () => this.keeper.store(),
      open: (id) => this.open(id),
    });
    /** How many times a notebook was put on the desk, or began to be. */
    this.puts = 0;
    /** Whether another window was heard of while a notebook was on its way to the desk. */
    this.isBehind = false;
    /** Ends when what another window's turn kept from this one is safe. */
    this.parted = Promise.resolve();
    /** Takes away the message that offers to undo the last edit. */
    this.takeAway = () => {};
    this.join();
    this.charts = new Charts(book);
    book.add(this.charts, () => isUp(byId('line-figure')));
    for (const part of [new Strip(book), new Readings(book), new Preferences(book, () => this.isSettled())]) book.add(part);
    /** What is there once it is asked for. @type {unknown[] | undefined} */
    this.onCall = undefined;
    /** The sections that come once the notebook is open. @type {{load(): Promise<void>}[]} */
    this.sections = [];
    this.later('cautions', ({ Cautions }) => new Cautions(book));
    this.later('apparatus', ({ Apparatus }) => new Apparatus(book));
    this.later('plan', ({ Plan }) => new Plan(book, (desk) => this.keep(desk)));
    this.delays = this.later('delays', ({ Delays }) => new Delays(book));
    this.later('line', ({ Line }) => new Line(book));
    this.later('uncertainty', ({ Uncertainty }) => new Uncertainty(book));
    this.later('result', ({ Result }) => new Result(book));
    this.report = this.later('report', ({ Report }) => new Report(book));
    watchLeaves(() => book.drawParts());
    this.file = /** @type {HTMLInputElement} */ (byId('open-file'));
    this.file.addEventListener('change', () => {
      for (const file of this.file.files ?? []) void this.openFile(file);
      this.file.value = '';
    });
    /** @type {LateSection<ClassSection>} */
    this.handedIn = new LateSection(book, 'class', async () => {
      const { ClassSection } = await classScript();
      return new ClassSection((file) => void this.openFile(file));
    }, () => this.handedIn.load());
    // Nothing of a class comes before its leaf is turned up.
    watchLeaves((name) => {
      if (name === 'class') void this.handedIn.load();
    });
    new Notebooks({
      shelf: this.shelf,
      current: () => this.keeper.id,
      settle: () => this.keeper.settle(),
      chooseFile: () => this.file.click(),
      open: (id) => this.open(id),
      blank: () => this.keep(blankDesk()),
      demo: () => this.openDemo(),
      tour,
      demoSet: globalThis.SLOPE_CORE ? undefined : (set) => this.openDemoSet(set),
      openNext: () => this.openLatest(),
      rename: (id, title) => this.rename(id, title),
    });
  }

  /** Tells what was done, and offers to take it back, until something else has become of the notebook. @param {string} text */
  offerUndo(text) {
    const take = toast(text, { label: say('strip-undo'), run: () => undo(this.book) });
    queueMicrotask(() => { this.takeAway = take; });
  }

  /** Who takes the files that come in by hand. @returns {Takers} */
  takers() {
    return {
      pictures: (files, row) => this.delays.ask(({ pictures }) => void pictures.take(files, row)),
      traces: (files) => this.delays.ask(({ traces }) => void traces.take(files)),
      notebook: (file) => void this.openFile(file),
      all: (files) => {
        const isHere = document.body.dataset.at === 'class';
        if (isHere) this.handedIn.ask((handedIn) => void handedIn.take(files));
        return isHere;
      },
    };
  }

  /**
   * A section that comes once the notebook is open.
   * @template {Part} T
   * @param {SectionId} id
   * @param {(scripts: LateScripts) => T} make
   */
  later(id, make) {
    const section = new LateSection(this.book, id, async () => {
      const part = make(await lateScripts());
      this.setWritten();
      return part;
    }, () => this.grow());
    this.sections.push(section);
    return section;
  }

  /** Brings the sections that come once a notebook is open. */
  async grow() {
    // Where their script has not come, the sections say so.
    const late = await lateScripts().catch(() => undefined);
    const loading = [];
    for (const section of this.sections) {
      loading.push(section.load());
      // One at a time: a key or a touch need not wait for all of them.
      if (late) await aMoment();
    }
    await Promise.all(loading);
    this.onCall ??= late?.onCall(this.book, this.keeper, this.charts);
  }

  /** Joins book, keeper and tabs. */
  join() {
    const { book, keeper, tabs, banner } = this;
    book.onChange = () => {
      this.takeAway();
      this.takeAway = () => {};
      keeper.note();
    };
    book.onRefusal = (message) => toast(message);
    book.onUndoable = (done) => this.offerUndo(done);
    book.onEvidence = (row) => this.delays.ask((delays) => delays.goTo(row));
    book.onPasted = (turned, headings) => {
      const told = [...(turned ? [say('pasted-turned')] : []), ...(headings ? [say('pasted-headed', { headings })] : [])];
      if (told.length > 0) this.offerUndo(inWords(told));
    };
    keeper.onSaved = (saved, why) => banner.show(saved, why);
    keeper.onStored = (from, entries) => tabs.spread(from, entries);
    keeper.onSuperseded = () => tabs.lose();
    tabs.onAsk = () => keeper.settle();
    tabs.onLoss = () => this.oncePut(() => { this.parted = this.part(); });
    tabs.onGain = () => this.oncePut(() => this.reload());
    tabs.onEntries = (from, entries) => this.oncePut(() => this.follow(from, entries));
  }

  /**
   * Does what another window gives cause for. While the notebook that it speaks of is still on its way to the desk, it is
   * read anew once it lies there.
   * @param {() => unknown} work
   */
  oncePut(work) {
    if (this.tabs.id === this.keeper.id) work();
    else this.isBehind = true;
  }

  /** @param {boolean} writes */
  setRole(writes) {
    this.book.readOnly = !writes;
    this.setWritten();
    this.keeper.tell();
  }

  /** Lets be written where this tab writes, and nowhere where it reads along. */
  setWritten() {
    const { readOnly } = this.book;
    for (const box of /** @type {NodeListOf<HTMLFieldSetElement>} */ (document.querySelectorAll('[data-written]'))) {
      box.disabled = readOnly;
    }
    /** @type {HTMLInputElement} */ (byId('title')).readOnly = readOnly;
  }

  /**
   * Opens a notebook of the shelf; one that can't be opened is left as it is.
   * @param {string} id
   * @returns {Promise<boolean>} false where it can't; true also where another was opened meanwhile
   */
  async open(id) {
    if (!await this.isSettled()) return false;
    const put = this.begin();
    this.isBehind = false;
    const writes = await this.tabs.enter(id);
    try {
      const loaded = await this.shelf.load(id, writes);
      if (!this.put(put, id, loaded)) return true;
      if (loaded.aside > 0) toast(say('saving-aside', { n: loaded.aside }));
      if (this.isBehind) await this.reload();
      return true;
    } catch (error) {
      const title = this.shelf.item(id)?.title || say('untitled');
      toast(say('saving-cannot-open', { title, why: messageOf(error) }));
      await this.stay();
      return false;
    }
  }

  /** Goes back to the notebook that is open, which may be another window's by now. */
  async stay() {
    const { id } = this.keeper;
    if (!id || await this.tabs.enter(id)) return;
    this.parted = this.part();
    await this.parted;
  }

  /** Whether the open notebook can be left without losing anything; says so if it can't. */
  async isSettled() {
    await this.parted;
    const settled = await this.keeper.settle();
    if (!settled) toast(say('saving-stay'));
    return settled;
  }

  /** Begins to put a notebook on the desk: whatever else was about to be put there is not. */
  begin() {
    this.puts += 1;
    return this.puts;
  }

  /**
   * @param {number} put as it was begun
   * @param {string} id
   * @param {Pick<Loaded, 'desk' | 'stored' | 'apart'>} loaded
   * @returns {boolean} whether it was put, and not something else begun later
   */
  put(put, id, { desk, stored, apart }) {
    if (put !== this.puts) {
      desk.free();
      return false;
    }
    this.banner.apart = apart ?? (id === this.keeper.id ? this.banner.apart : undefined);
    const old = this.book.desk;
    const isOther = id !== this.keeper.id;
    setHidden(byId('tour-offer'), true);
    // What was typed while the other one was on its way is of this one.
    if (isOther) this.keeper.close();
    this.book.put(desk);
    this.keeper.watch(id, stored);
    this.setRole(this.tabs.writing);
    this.book.draw();
    old.free();
    if (isOther && !(put === 1 && location.hash)) turnTo(this.book.view.rows.length > 0 ? 'readings' : 'bench');
    rememberOpen(id);
    return true;
  }

  /** Reads the open notebook again from storage. */
  async reload() {
    await this.parted;
    const put = this.begin();
    const { id } = this.keeper;
    this.put(put, id, await this.shelf.load(id, this.tabs.writing));
  }

  /** Another window came to write: what this one had not stored is kept, and it reads along. */
  async part() {
    flushAll();
    this.begin();
    this.setRole(false);
    const apart = await this.keeper.part();
    if (apart) this.banner.apart = apart;
    this.parted = Promise.resolve();
    await this.reload();
  }

  /**
   * Follows what another window wrote.
   * @param {number} from
   * @param {string[]} entries
   */
  follow(from, entries) {
    if (from !== this.keeper.stored || this.keeper.lacking() > 0) {
      this.reload();
      return;
    }
    try {
      this.book.desk.replay(entries);
      this.keeper.stored = from + entries.length;
    } catch (error) {
      // Such as another tab with a later version of this page.
      toast(messageOf(error));
    }
    this.book.redraw();
  }

  /**
   * Keeps a notebook as a new one and opens it.
   * @param {Desk} desk
   */
  async keep(desk) {
    if (!await this.isSettled()) return;
    const put = this.begin();
    const id = newId();
    await this.tabs.enter(id);
    if (!this.put(put, id, { desk, stored: 0, apart: undefined })) return;
    // On the shelf at once, also while there is nothing in it.
    this.keeper.note();
    this.keeper.snapshot();
    // A new notebook begins with what is to be done first.
    if (this.book.view.rows.length === 0) (byId('next-step').querySelector('button') ?? byId('bench')).focus({ preventScroll: true });
  }

  async openDemo() {
    const text = await demoText();
    if (text === undefined) toast(say('notebooks-no-demo'));
    await this.keep(text === undefined ? blankDesk() : core.Desk.open(text));
  }

  /** Opens a demo with files, in English where the language of the page has none. @param {string} set */
  async openDemoSet(set) {
    for (const language of [say('language'), 'en']) {
      const name = `${set}.${language}.zip`;
      const answer = await fetch(new URL(`demo/${name}`, document.baseURI)).catch(() => undefined);
      if (answer?.ok) return this.openFile(new File([await answer.blob()], name));
    }
    toast(say('notebooks-no-demo'));
  }

  /**
   * Opens the notebook used last; on a first visit, the demo.
   * @param {{id: string, at: string}} [recovered] one that a crash took off the shelf, and when it was last changed
   */
  async openLatest(recovered) {
    const items = this.shelf.list(false).map((item) => item.id);
    const here = openHere();
    const remembered = here || (recall('open') ?? '');
    // What is remembered lies beside the shelf: the crash took that, too.
    const last = recovered && recovered.at > (this.shelf.item(remembered)?.changed ?? '') ? recovered.id : remembered;
    const all = last && items.includes(last) ? [last, ...items.filter((id) => id !== last)] : items;
    // Who comes to a shared computer finds nothing that another left, and no other window's blank notebook.
    const order = !here && recall('computer') === 'shared' ? items.filter((id) => this.shelf.isBlank(id)) : all;
    for (const id of order) if (await this.open(id) && (order === all || this.tabs.writing)) return;
    if (items.length > 0) return this.keep(blankDesk());
    await this.openDemo();
    this.offer();
  }

  /** Offers a newcomer, who sees the demo, what most come for. */
  offer() {
    const offer = byId('tour-offer');
    setHidden(offer, false);
    const on = (/** @type {string} */ id, /** @type {() => unknown} */ work) => byId(id).addEventListener('click', work);
    on('tour-start', tour);
    on('offer-file', () => this.file.click());
    on('offer-blank', () => this.keep(blankDesk()));
    on('tour-dismiss', () => setHidden(offer, true));
  }

  /** @param {string} id @param {string} title */
  async rename(id, title) {
    if (id !== this.keeper.id) return this.tabs.withTurn(id, () => this.shelf.rename(id, title));
    const done = this.book.edit({ set_title: title });
    await this.keeper.settle();
    return done;
  }

  /** Opens what was posted. @returns {Promise<boolean>} whether it could be */
  openPosted() {
    return postedScript().then((posted) => posted.openPosted(this), (error) => {
      toast(messageOf(error));
      return false;
    });
  }

  /** @param {File} file */
  async openFile(file) {
    try {
      const { openFile } = await postedScript();
      await openFile(this, file);
    } catch (error) {
      toast(say('report-not-opened', { name: file.name, why: messageOf(error) }));
    }
  }
}

/** Whether the address or the file itself asks for a notebook. */
function asksForOne() {
  return location.hash.startsWith('#open=') || location.search.includes('open=') || document.getElementById('posted') !== null;
}

/** What comes once a notebook is open. */
const lateScripts = lateScript(() => import('./late-sections.js'));

/** What opens what was posted. */
const postedScript = lateScript(() => import('./posted.js'));

/** What looks through what a class handed in. */
const classScript = lateScript(() => import('./class.js'));

/** Leads through the demo that is open. */
async function tour() {
  setHidden(byId('tour-offer'), true);
  const { Tour } = await lateScripts();
  new Tour().start();
}

/** A new notebook; its decimal mark is the one of the language in use, as the CLDR has it. */
function blankDesk() {
  const desk = core.Desk.blank();
  if (new Intl.NumberFormat(say('language')).format(0.5).includes(',')) desk.apply({ set_decimal_mark: 'comma' }, now());
  return desk;
}

/** The page, with a notebook open. */
async function opened() {
  const opening = Journal.open();
  // Asked of the database while the core is compiled.
  const names = opening.then((journal) => journal?.notebooks() ?? []);
  const [, , journal, journalled] = await Promise.all([loadWords().then(putWords).then(putHelp), begin(), opening, names]);
  await aMoment();
  const book = new Book();
  await aMoment();
  const page = new Page(book, journal);
  await aMoment();
  const { refused, latest } = await page.shelf.recover(journalled);
  if (!(asksForOne() && await page.openPosted())) await page.openLatest(latest);
  // Where something else than the readings is in sight, it is there at once.
  if (!isUp(byId('readings'))) await page.grow();
  for (const why of refused) toast(say('saving-cannot-open', { title: say('untitled'), why: messageOf(why) }));
  document.body.dataset.ready = 'true';
  goBack();
  performance.mark('ready');
  return page;
}

async function start() {
  const opening = opened();
  listenForFiles(opening.then((page) => page.takers()));
  let page;
  try {
    page = await opening;
  } catch (error) {
    // The table of words may be what is missing: this one text stands in the page, in every language.
    byId('starting').hidden = true;
    byId('not-started').append(error instanceof Error ? error.message : messageOf(error));
    byId('not-started').hidden = false;
    return;
  }
  await page.grow();
  document.body.dataset.complete = 'true';
  addEventListener('hashchange', () => location.hash.startsWith('#open=') && page.openPosted());
  sweepSoon(page.book);
  // Bundles and pictures need it, and later the page may have no way to fetch it; what is asked for then says so.
  EvidenceWorker.parts().catch(() => {});
  // Where site data is off nothing can be kept, and the banner says so already.
  keepOffline({
    newer: (use) => {
      page.banner.newer = use;
      page.keeper.tell();
    },
    settle: () => page.isSettled(),
  }).catch(() => {});
}

void start();
