/**
 * The one door to the core (wasm): starting it, and its exports.
 */
import init, * as core from './slope_of_light.js';
import { LANGUAGE } from './language.js';
import { unpacked } from './packed.js';
import { compiled } from './wasm.js';
import { say, worded } from './words.js';

/** What the core offers; usable once {@link begin} has ended. */
export { core };

const WASM = 'slope_of_light_bg.wasm';

/** @type {WebAssembly.Module | undefined} */
let module;

/** The core as compiled, to be handed to workers, so that none compiles it again. */
export function compiledCore() {
  return module;
}

/** Starts the core. */
export async function begin() {
  module = await compiled(globalThis.SLOPE_CORE, WASM);
  await init({ module_or_path: module });
}

/**
 * The text of the demo notebook in the language of this visit, in English where it has none; nothing when it can't be had.
 * @returns {Promise<string | undefined>}
 */
export async function demoText() {
  return await demoIn(LANGUAGE) ?? (LANGUAGE === 'en' ? undefined : demoIn('en'));
}

/** @param {string} language @returns {Promise<string | undefined>} */
async function demoIn(language) {
  if (globalThis.SLOPE_CORE) {
    const inside = globalThis.SLOPE_DEMO?.[language];
    return inside && unpacked(inside, 'application/json').text();
  }
  try {
    const answer = await fetch(new URL(`demo/typed-readings.${language}.json`, document.baseURI));
    return answer.ok ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
}

/**
 * What went wrong, in words: the core's, or ours. What a browser throws, of a kind of its own, is in a language of its own too,
 * and quoted.
 * @param {unknown} error
 * @returns {string}
 */
export function messageOf(error) {
  if (error instanceof Error && error.constructor !== Error) return say('browser-says', { words: error.message });
  if (error && typeof error === 'object' && 'message' in error) return worded(error.message);
  return String(error);
}

/**
 * @param {unknown} error
 * @param {string} kind
 */
export function isKind(error, kind) {
  return typeof error === 'object' && error !== null && 'kind' in error && error.kind === kind;
}
