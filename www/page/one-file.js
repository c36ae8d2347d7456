/**
 * What the one file begins with: unpacks the page's script, which the file's policy lets in by its hash, and runs it. What
 * goes wrong is told here, since the script that tells it else is what is missing.
 */
import { unpacked } from './packed.js';

// Out of these elements, before any script changes them, the page makes another one file: none can read itself from the disk.
globalThis.SLOPE_SOURCE = document.documentElement.cloneNode(true);
try {
  const script = document.createElement('script');
  script.type = 'module';
  script.textContent = await unpacked(globalThis.SLOPE_PAGE ?? '', 'text/javascript').text();
  document.head.append(script);
} catch (error) {
  document.getElementById('starting')?.setAttribute('hidden', '');
  const told = document.getElementById('not-started');
  told?.append(String(error));
  told?.removeAttribute('hidden');
}
