/**
 * A small notebook in the fragment of a link: its text deflated (RFC 1951), in base64url (RFC 4648, section 5). A fragment
 * is never sent to a host (RFC 3986, section 3.5).
 */
import { say } from './words.js';

/** How long a link may be, bytes: what all programs should take (RFC 9110, section 4.1). */
export const MOST_IN_LINK = 8_000;
/** What the fragment of such a link begins with. */
export const OPENS = '#open=';
/** How long the text in a link may be, bytes: less than deflating can hide in the longest link. */
const MOST_IN_TEXT = 1_000_000;

/** @param {string} text of a notebook @returns {Promise<string>} */
export async function fragmentOf(text) {
  const packed = new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw')));
  const letters = Array.from(new Uint8Array(await packed.arrayBuffer()), (byte) => String.fromCharCode(byte));
  return OPENS + btoa(letters.join('')).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/**
 * The text in a fragment. One that is longer than a link may be is not unpacked, and unpacking ends at a limit.
 * @param {string} fragment
 * @returns {Promise<string>}
 */
export async function textIn(fragment) {
  if (fragment.length > MOST_IN_LINK) throw new Error(say('posted-too_long', { most: MOST_IN_LINK }));
  let bytes;
  try {
    bytes = await inflated(fragment.slice(OPENS.length).replaceAll('-', '+').replaceAll('_', '/'));
    if (bytes) return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Error(say('posted-broken'));
  }
  throw new Error(say('posted-too_large', { most: MOST_IN_TEXT }));
}

/** @param {string} packed @returns {Promise<Uint8Array<ArrayBuffer> | undefined>} nothing where it is too long */
async function inflated(packed) {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const text = new Uint8Array(MOST_IN_TEXT);
  for (let end = 0; ;) {
    const { done, value } = await reader.read();
    if (done) return text.subarray(0, end);
    if (end + value.length > MOST_IN_TEXT) {
      await reader.cancel();
      return undefined;
    }
    text.set(value, end);
    end += value.length;
  }
}
