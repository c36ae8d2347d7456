/**
 * Where a wasm and the script of a worker are: beside the page, or inside the one file.
 */
import { unpacked } from './packed.js';

/**
 * The wasm, compiled; a compiled one can be handed to workers, so that none compiles it again.
 * @param {string | undefined} inside in the one file: its bytes packed
 * @param {string} name of the file beside the page
 * @returns {Promise<WebAssembly.Module>}
 */
export async function compiled(inside, name) {
  const answer = inside ? unpacked(inside, 'application/wasm') : await fetched(name);
  // A host that does not know wasm by its type sends it as plain bytes, which can't be compiled while they come.
  return answer.headers.get('Content-Type') === 'application/wasm'
    ? WebAssembly.compileStreaming(answer)
    : WebAssembly.compile(await answer.arrayBuffer());
}

/**
 * Starts a worker. Packed, its script is a classic one that holds all that it needs, since a module can't be started from
 * a file on the disk; from source it is the module that it is.
 * @param {string} address
 */
export function startWorker(address) {
  return new Worker(address, { type: globalThis.SLOPE_PACKED ? 'classic' : 'module' });
}

/**
 * The address of a worker's script. Packed, it is held here, so that a worker can be started where nothing can be fetched.
 * A module can't be held: it imports what is beside it.
 * @param {string | undefined} inside in the one file: its text packed
 * @param {string} name of the file beside the page
 */
export async function workerHere(inside, name) {
  if (!inside && !globalThis.SLOPE_PACKED) return new URL(name, document.baseURI).href;
  const text = await (inside ? unpacked(inside, 'text/javascript') : await fetched(name)).text();
  return URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
}

/** @param {string} name of a file beside the page */
async function fetched(name) {
  const answer = await fetch(new URL(name, document.baseURI));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer;
}
