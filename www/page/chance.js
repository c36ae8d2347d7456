/**
 * What nobody chose: digits by which things are told apart, or behind which something is hidden.
 */

/** The hexadecimal digits of so many random bytes. @param {number} bytes */
export function randomDigits(bytes) {
  return Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
