/** What the one-file page is handed before its script runs; absent when the page is served. */
declare global {
  /** The page's script, after gzip, in digits. */
  var SLOPE_PAGE: string | undefined;
  /** The look of what comes later, after gzip, in digits. */
  var SLOPE_LATE_STYLE: string | undefined;
  /** The wasm, after gzip, in digits. */
  var SLOPE_CORE: string | undefined;
  /** The script that the workers of the trials run, after gzip, in digits. */
  var SLOPE_TRIALS_WORKER: string | undefined;
  /** The wasm of the evidence workers, after gzip, in digits. */
  var SLOPE_EVIDENCE: string | undefined;
  /** The script that the evidence workers run, after gzip, in digits. */
  var SLOPE_EVIDENCE_WORKER: string | undefined;
  /** Whether scripts were joined, those of the workers into classic ones. */
  var SLOPE_PACKED: boolean | undefined;
  /** The help page of each language, after gzip, in digits. */
  var SLOPE_HELP: Record<string, string> | undefined;
  /** The pictures that all languages of it share, as data URLs after gzip, in digits, by how its pages name them. */
  var SLOPE_HELP_PICTURES: Record<string, string> | undefined;
  /** The table of words of each language, after gzip, in digits; but of the first, without the names of its texts. */
  var SLOPE_WORDS: Record<string, string> | undefined;
  /** In the service worker: the version of the site, and its files with their SHA-256 in base64. */
  var SLOPE_SITE: { version: string, files: Record<string, string> } | undefined;
  /** The page's own elements, as they were before its script ran. */
  var SLOPE_SOURCE: Node | undefined;
  /** The demo notebook in each language that it is written in, after gzip, in digits. */
  var SLOPE_DEMO: Record<string, string> | undefined;
}

/** What the service worker has beside what a page has (W3C Service Workers, section 4). */
declare global {
  var registration: ServiceWorkerRegistration;
  function skipWaiting(): Promise<void>;
  interface ExtendableEvent extends Event {
    waitUntil(work: Promise<unknown>): void;
  }
  interface FetchEvent extends ExtendableEvent {
    readonly request: Request;
    respondWith(answer: Promise<Response>): void;
  }
  interface WindowEventMap {
    install: ExtendableEvent;
    activate: ExtendableEvent;
    fetch: FetchEvent;
  }
}

export {};
