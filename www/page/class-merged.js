/**
 * The digests of the entries of notebooks of a class; and whether two have rows in common because partners merged them: a merge
 * stands in the log, with the digest of the first entry that is the partner's own.
 */
import { fileOf, textIn } from './class-pool.js';
import { core } from './core.js';
import { reader } from './worker-slot.js';

/** @import { ClassEntry, Handed } from './class-pool.js' */

/** The chained digests of the entries of a file that was looked into. @type {WeakMap<Handed, Promise<Set<string>>>} */
const chains = new WeakMap();

/**
 * Whether one of them was merged into the other, or both hold the same partner's.
 * @param {ClassEntry | undefined} one
 * @param {ClassEntry | undefined} other
 */
export async function areMerged(one, other) {
  if (!one?.row || !other?.row) return false;
  const { row: { merged: inOne } } = one;
  const { row: { merged: inOther } } = other;
  return inOne.some((own) => inOther.includes(own)) || await holds(other.handed, inOne) || await holds(one.handed, inOther);
}

/** Whether a log holds an entry with one of the digests. @param {Handed} handed @param {string[]} digests */
async function holds(handed, digests) {
  if (digests.length === 0) return false;
  const chain = await chainOf(handed);
  return digests.some((digest) => chain.has(digest));
}

/** The chained digests of the entries of a file; of one that can't be read, none. @param {Handed} handed @returns {Promise<Set<string>>} */
export function chainOf(handed) {
  const known = chains.get(handed) ?? readChain(handed);
  chains.set(handed, known);
  return known;
}

/** @param {Handed} handed */
async function readChain(handed) {
  try {
    const desk = core.Desk.open(await textIn(await fileOf(handed)));
    const entries = desk.entries(0);
    desk.free();
    return new Set(await reader.ask('chain', entries));
  } catch {
    // A file that can't be read any more tells of no merge; that the readings are the same is asked about then.
    return new Set();
  }
}
