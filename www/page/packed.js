/**
 * What the one file holds packed.
 */

/**
 * What stands inside the one file after gzip, in base64.
 * @param {string} inside
 * @param {string} type
 */
export function unpacked(inside, type) {
  const packed = new Blob([Uint8Array.from(atob(inside), (letter) => letter.charCodeAt(0))]);
  const bytes = packed.stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(bytes, { headers: { 'Content-Type': type } });
}
