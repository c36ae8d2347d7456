/**
 * Where the one file begins: it holds the whole core and all sections, so that nothing has to be brought later.
 */
import { sections } from './later.js';
import './main.js';

globalThis.SLOPE_LATER = { sections };
