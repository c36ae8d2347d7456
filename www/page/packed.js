/**
 * What the one file holds packed: bytes after gzip, in Z85 (ZeroMQ RFC 32), which takes a sixteenth less room than base64.
 */

const DIGITS = '0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.-:+=^!/*?&<>()[]{}@%$#';
/** Digits to a group, and the bytes that it stands for. */
const [GROUP, BYTES] = [5, 4];

/**
 * What stands inside the one file after gzip, in Z85, and a digit more: how many bytes at its end only fill a group.
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
  const groups = (text.length - 1) / GROUP;
  const view = new DataView(new ArrayBuffer(BYTES * groups));
  for (let group = 0; group < groups; group += 1) {
    let number = 0;
    for (let at = GROUP * group; at < GROUP * (group + 1); at += 1) number = DIGITS.length * number + (value[text.charCodeAt(at)] ?? 0);
    view.setUint32(BYTES * group, number);
  }
  return new Uint8Array(view.buffer, 0, view.byteLength - Number(text.at(-1)));
}
