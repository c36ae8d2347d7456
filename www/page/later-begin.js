/**
 * Begun by the page once it is open: brings the sections that follow, and the whole core, which they need.
 */
import { sections } from './later.js';
import * as whole from './slope_whole.js';

globalThis.SLOPE_LATER = { sections, whole };
