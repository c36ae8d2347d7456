/**
 * The one door to the core (wasm): starting it, and its exports with the page's own types.
 */
import init, * as exported from './slope_of_light.js';

/** @import { Core } from './types.js' */

/** What the core offers; usable once {@link begin} has ended. */
export const core = /** @type {Core} */ (/** @type {unknown} */ (exported));

const WASM = './slope_of_light_bg.wasm';
const DEMO = 'demo/typed-readings.json';

/** @type {WebAssembly.Module | undefined} */
let compiled;

/** The core as compiled, to be handed to workers, so that none compiles it again. */
export function compiledCore() {
  return compiled;
}

/** Starts the core. */
export async function begin() {
  const inside = globalThis.SLOPE_WASM_BASE64;
  compiled = inside ? await WebAssembly.compile(bytes(inside)) : await fetched(new URL(WASM, document.baseURI));
  await init({ module_or_path: compiled });
}

/** @param {URL} address */
async function fetched(address) {
  const answer = await fetch(address);
  // A host that does not know wasm by its type sends it as plain bytes, which can't be compiled while they come.
  return answer.headers.get('Content-Type') === 'application/wasm'
    ? WebAssembly.compileStreaming(answer)
    : WebAssembly.compile(await answer.arrayBuffer());
}

/**
 * The text of the demo notebook; nothing when it can't be had.
 * @returns {Promise<string | undefined>}
 */
export async function demoText() {
  if (typeof globalThis.SLOPE_DEMO === 'string') return globalThis.SLOPE_DEMO;
  if (globalThis.SLOPE_WASM_BASE64) return undefined;
  try {
    const answer = await fetch(new URL(DEMO, document.baseURI));
    return answer.ok ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
}

/** @param {string} base64 */
function bytes(base64) {
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
}

/**
 * The core's words for what went wrong.
 * @param {unknown} error
 * @returns {string}
 */
export function messageOf(error) {
  if (error && typeof error === 'object' && 'message' in error) return String(error.message);
  return String(error);
}

/**
 * @param {unknown} error
 * @param {string} kind
 */
export function isKind(error, kind) {
  return typeof error === 'object' && error !== null && 'kind' in error && error.kind === kind;
}
