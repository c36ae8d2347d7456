/**
 * The one door to the core (wasm): starting it, and its exports.
 */
import init, * as core from './slope_of_light.js';
import { compiled } from './wasm.js';
import { worded } from './words.js';

/** What the core offers; usable once {@link begin} has ended. */
export { core };

const WASM = 'slope_of_light_bg.wasm';
const DEMO = 'demo/typed-readings.json';

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
 * The text of the demo notebook; nothing when it can't be had.
 * @returns {Promise<string | undefined>}
 */
export async function demoText() {
  if (typeof globalThis.SLOPE_DEMO === 'string') return globalThis.SLOPE_DEMO;
  if (globalThis.SLOPE_CORE) return undefined;
  try {
    const answer = await fetch(new URL(DEMO, document.baseURI));
    return answer.ok ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The core's words for what went wrong.
 * @param {unknown} error
 * @returns {string}
 */
export function messageOf(error) {
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
