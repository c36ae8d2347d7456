/** What the one-file page is handed before its modules run; absent when the page is served. */
declare global {
  /** The wasm, in base64. */
  var SLOPE_WASM_BASE64: string | undefined;
  /** The text of the script that the workers of the trials run. */
  var SLOPE_TRIALS_WORKER: string | undefined;
  /** The wasm of the evidence workers, in base64. */
  var SLOPE_WORKER_BASE64: string | undefined;
  /** The text of the script that the evidence workers run. */
  var SLOPE_EVIDENCE_WORKER: string | undefined;
  /** What the script that is loaded later brings; the one file has the whole core from the start. */
  var SLOPE_LATER: {
    sections(book: import('../../www/page/book.js').Book, keep: (desk: import('../../www/page/types.js').Desk) => Promise<void>):
      import('../../www/page/types.js').Part[];
    whole?: import('../../www/page/core.js').Whole;
  } | undefined;
  /** The demo notebook's JSON text; null when the file was made without one. */
  var SLOPE_DEMO: string | null | undefined;
}

export {};
