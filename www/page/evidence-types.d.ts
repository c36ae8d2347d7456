/**
 * What the page asks its evidence worker, and what that answers: scripts on both sides. What crosses between the worker's
 * script and its wasm is declared in worker-types.d.ts.
 */

import type {
  Class, Corner, DecimalMark, Detector, Envelope, Feedback, Given, Key, Known, Layout, LensChecks, MarkedBefore, Measured, Named, Pair,
  Proposal, RowTruth, Standing, Value, Wanted,
} from './worker-types.js';

/** What a promise of the worker's is refused with: `message` is for a person. */
export interface ThrownInWords { kind: string; message: string }
/**
 * What scripts refuse by themselves, for which the page has words; all else comes in the wasm's.
 * - From a file: `too_large`, `too_many`, `file` (can't be read).
 * - From a picture: `decode` (the browser can't decode it), `no_canvas`.
 * - From the worker: `start` (can't be had), `crash` (came to a bad end), `stopped` (on request), `nothing_kept`.
 */
export type Refusal =
  | 'too_large' | 'too_many' | 'file' | 'decode' | 'no_canvas' | 'start' | 'crash' | 'stopped' | 'nothing_kept';

/** A file of a trace, with its layout where a person corrected it. */
export interface TraceFile { file: File; layout?: Layout | undefined }
/** One file that holds both traces, or A's and B's. */
export type TraceFiles = [TraceFile] | [TraceFile, TraceFile];
/** What is asked of a pair, and in which decimal mark what is refused is told: the notebook's. */
export type Asked = Wanted & { decimal: DecimalMark };
/** A layout, and the fields of the first rows of samples by it. */
export interface LookedAt { layout: Layout; rows: string[][] }
/** A file as the notebook keeps hold of it. */
export interface Held { name: string; size: number; sha256: string }
/** What comes of a pair's files; `files` and `layouts` in the files' order. */
export interface MeasuredFiles { files: Held[]; layouts: Layout[]; measured: Measured }

/** What a batch came to. */
export interface BatchEnd { done: number; stopped: boolean }
/** Told once for each pair of a batch, in the order in which they are finished. */
export interface BatchStep {
  /** Place in the list of pairs. */
  index: number;
  /** Nothing when this pair was refused. */
  found: MeasuredFiles | null;
  refused: ThrownInWords | null;
  /** Pairs finished so far, and pairs in all. */
  done: number;
  all: number;
}

/** A picture as it is kept: turned upright, scaled down, and without what the camera wrote beside the pixels. */
export interface Shrunk { blob: Blob; width: number; height: number; sha256: string }

export type PictureSource = Blob | ImageBitmap;
/** A picture goes with a number, by which the worker knows whether it keeps its copy. */
export interface Calls {
  look_at(file: File, known: Known, layout: Layout | undefined): LookedAt;
  common_level(levels: number[]): number | null;
  measure(files: TraceFile[], asked: Asked, keep: boolean): MeasuredFiles;
  /** Pairs whose files are handed over one after the other as a whole. */
  measure_all(whole: Blob, pairs: FilePart[][], asked: Asked): MeasuredPart[];
  envelope(side: Detector, from: number, to: number, points: number): Envelope;
  pair(names: string[]): Pair[];
  rail_reading(names: string[], rails: string[], decimal: DecimalMark): Named[];
  pack(names: string[], contents: Uint8Array<ArrayBuffer>[]): Uint8Array<ArrayBuffer>;
  /** Begins a bundle that is packed entry by entry; one that was begun before is let go. */
  pack_begin(): undefined;
  /** The next bytes of it, with an entry in them. */
  pack_entry(name: string, content: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer>;
  /** Its last bytes. */
  pack_end(): Uint8Array<ArrayBuffer>;
  unpack(bundle: Blob): [string, Uint8Array<ArrayBuffer>][];
  /** Files that were handed in, one after the other as a whole. */
  hand_in(whole: Blob, parts: NamedPart[]): HandedPart[];
  /** Of each, whether it may hold a notebook by its name. */
  handed_in_by_name(names: string[]): boolean[];
  /** `names` of components, each as JSON, in the order of their numbers. */
  class_of(all: Given[], keys: Key[], names: string[], decimal: DecimalMark): Class;
  /** The secret of a data set by its number. */
  set_secret(seed: string, number: number): string;
  write_key(key: Key): string;
  /** Both traces of a row of a data set, in one file. */
  traces_of(secret: string, so: RowTruth, decimal: DecimalMark): TakenFile;
  /** A photograph of the screen at a row of a data set, a JPEG. */
  photograph_of(secret: string, so: RowTruth): TakenFile & { width: number; height: number };
  write_feedback(feedback: Feedback): string;
  /** Nothing where a file's text is no such file. */
  read_feedback(name: string, text: string): Feedback | undefined;
  /** SHA-256 of a text, in hexadecimal digits. */
  digest(text: string): string;
  /** Of each text the SHA-256 of the digest before it and of itself, in hexadecimal digits. */
  chain(texts: string[]): string[];
  /** Of each file, whether it begins as a picture does. */
  are_pictures(files: File[]): boolean[];
  shrink(file: File): Shrunk;
  propose(picture: PictureSource, number: number, columns: number, rows: number, before: MarkedBefore | undefined): Proposal;
  lens_checks(picture: PictureSource, number: number, corners: Corner[], columns: number, rows: number): LensChecks;
  follow(
    picture: PictureSource, number: number, checks: Corner[], from: Corner[], to: Corner[], columns: number, rows: number,
  ): Corner[];
  check_series(
    picture: PictureSource, number: number, corners: Corner[], u_pixels: number, columns: number, rows: number,
  ): Standing;
}
/** What the simulated bench took of a row. */
export interface TakenFile { bytes: Uint8Array<ArrayBuffer>; sha256: string }
/** A file among others that are handed over as a whole, by its name. */
export interface NamedPart { name: string; size: number }
/** What a file that was handed in turned out to be; `thrown` where it was refused. */
export interface HandedPart { found: Found | null; thrown: WorkerRefusal | null }
/** A notebook with the table of its line, the key to data sets, what a teacher says of a notebook, or files to be looked at in their turn. */
export type Found =
  | { text: string; line: string | undefined }
  | { key: Key }
  | { feedback: Feedback }
  | { files: [name: string, bytes: Uint8Array<ArrayBuffer>][] };
/** A file among others that are handed over as a whole. */
export interface FilePart { name: string; size: number; layout: Layout | undefined }
/** What a trace file holds. */
export interface Content { name: string; layout: Layout | undefined; bytes: Uint8Array<ArrayBuffer>; sha256: string }
/** One of many pairs; `thrown` where it was refused. */
export interface MeasuredPart { found: MeasuredFiles | null; thrown: WorkerRefusal | null }
/** A refusal of the wasm's, with its message, or the worker's own, by the name of a file. */
export interface WorkerRefusal { kind: string; message: Value; name?: string }
export type Call = keyof Calls;
/** What is asked for by a call, with its number. */
export type Asking<C extends Call = Call> = { [One in C]: { id: number; call: One; values: Parameters<Calls[One]> } }[C];
/** What comes of a call. */
export type CallOutcome<C extends Call = Call> = { [One in C]: ReturnType<Calls[One]> }[C];
export type Task = { core: WebAssembly.Module } | Asking;
/** `crashed` where the worker can't go on: `why` is empty where the browser does not say. */
export type Answer =
  | { started: true }
  | { id: number; value: CallOutcome }
  | { id: number; thrown: WorkerRefusal }
  | { crashed: true; why: string };
