/**
 * A place on a rail, in words.
 */
import { say } from './words.js';

/** @import { PlaceView } from './types.js' */

/**
 * Where it is; and of a reading proposed there, u(v)/v as it is and as it would be.
 * @param {PlaceView} place
 * @param {[string, string] | null} [effect]
 */
export function placeText({ shown: reading, rail, distance }, effect) {
  if (!effect) return say('plan-place', { reading, rail, distance });
  const [before, after] = effect;
  return say('plan-place-effect', { reading, rail, distance, before, after });
}
