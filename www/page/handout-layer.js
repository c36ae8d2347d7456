/**
 * The teacher's layer of a notebook that was handed out, as the text of which its digest is taken.
 */

/** @import { Desk } from './slope_of_light.js' */

/** Its entries as this version writes them, one a line. @param {Desk} desk @param {number} entries how many they are */
export function layerOf(desk, entries) {
  return desk.entries(0).slice(0, entries).join('\n');
}
