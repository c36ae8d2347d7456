/**
 * What the one file holds packed: bytes after gzip, in digits of 13 bits to a pair, which take a thirteenth less room than
 * base64.
 */

/** What ASCII can print but the space and what means something in a string or could end its script, as the packer has it. */
const DIGITS = '!#$%&\'()*+,-./0123456789:;=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]^_`abcdefghijklmnopqrstuvwxyz{|}~';
/** Bits that a pair of digits holds. */
const PAIR = 13;

/**
 * What stands inside the one file after gzip, in digits.
 * @param {string} inside
 * @param {string} type
 */
export function unpacked(inside, type) {
  const bytes = new Blob([decoded(inside)]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(bytes, { headers: { 'Content-Type': type } });
}

/** @param {string} text */
function decoded(text) {
  const value = new Uint8Array(128);
  for (let digit = 0; digit < DIGITS.length; digit += 1) value[DIGITS.charCodeAt(digit)] = digit;
  const at = (/** @type {number} */ place) => value[text.charCodeAt(place)] ?? 0;
  const bytes = new Uint8Array(Math.floor((PAIR * text.length) / 16));
  let [held, bits, byte] = [0, 0, 0];
  for (let place = 0; place < text.length; place += 2) {
    held |= (at(place) + DIGITS.length * at(place + 1)) << bits;
    bits += PAIR;
    for (; bits >= 8; bits -= 8, held >>= 8, byte += 1) bytes[byte] = held;
  }
  return bytes;
}
