/**
 * What the one file begins with: unpacks the page's script, which the file's policy lets in by its hash, and runs it.
 */
import { unpacked } from './packed.js';

// Out of these elements, before any script changes them, the page makes another one file: none can read itself from the disk.
globalThis.SLOPE_SOURCE = document.documentElement.cloneNode(true);
const script = document.createElement('script');
script.type = 'module';
script.textContent = await unpacked(globalThis.SLOPE_PAGE ?? '', 'text/javascript').text();
document.head.append(script);
