/**
 * The shapes that cross the border between the evidence worker (a wasm of its own) and the page. They mirror the
 * packages `slope-evidence` and `slope-worker`. Times are in ns, levels in V, places on a picture in pixels of the
 * picture as it is kept; the page shows none of these numbers before the core has made them into text.
 */

import type { Estimator, Traces } from './types.js';

/** What a promise of the worker's is refused with: `message` is for a person. */
export interface Thrown { kind: Refusal; message: string }
/**
 * - From a file: `too_large`, `too_many`, `file` (can't be read), `read` (a trace file's own refusal), `lacks_trace`.
 * - From a picture: `picture` (no picture, or too many pixels), `decode` (the browser can't decode it), `propose`,
 *   `plane`, `no_canvas`.
 * - From the worker: `start` (can't be had), `crash` (came to a bad end), `stopped` (on request), `nothing_kept`.
 */
export type Refusal =
  | 'too_large' | 'too_many' | 'file' | 'read' | 'lacks_trace' | 'picture' | 'decode' | 'propose' | 'plane'
  | 'no_canvas' | 'start' | 'crash' | 'stopped' | 'nothing_kept' | 'asked' | 'bundle';

export type Detector = 'A' | 'B';

/* Trace files. */

export type Delimiter = 'tab' | 'semicolon' | 'comma' | 'bar' | 'space';
export type Role = 'time' | 'channel_a' | 'channel_b' | 'ignored';
export type Unit = 's' | 'ms' | 'µs' | 'ns' | 'ps' | 'V' | 'mV' | '1';
export interface Column { role: Role; unit: Unit; unit_stated: boolean; label: string }
export interface Setting { name: string; value: string }
/** How the numbers of a file are set out: recognised, shown, and corrected by a person. */
export interface Layout {
  delimiter: Delimiter;
  decimal: 'point' | 'comma';
  /** Counted from 1. */
  first_line: number;
  columns: Column[];
  /** ns, where no column gives the time. */
  step: number | null;
  start: number | null;
  settings: Setting[];
}

/** What a file's name tells. */
export interface Named { reading: string | null; rail: string | null; channel: Detector | null }
/** The files of one position, by their places in the list of names. */
export interface Pair { a: number; b: number | null }

/** A file of a trace, with its layout where a person corrected it. */
export interface TraceFile { file: File; layout?: Layout | undefined }
/** One file that holds both traces, or A's and B's. */
export type TraceFiles = [TraceFile] | [TraceFile, TraceFile];

export type LevelOf = 'pair' | 'run' | 'stated';
/** What a person knows of a file's layout, and with it how the file reads. */
export interface Known { delimiter?: Delimiter; decimal?: 'point' | 'comma' }
/** A layout, and the fields of the first rows of samples by it. */
export interface LookedAt { layout: Layout; rows: string[][] }
export interface Asked {
  /** Where the level comes from: these two pulses, where it is not said. */
  level_of?: LevelOf;
  /** The fixed level over the baseline, V; `null` for half the lower pulse. */
  level: number | null;
  /** 0.1 to 0.9. */
  fraction: number;
  /** Stretches that a drawing of a trace may have; 0 for no drawing. */
  points: number;
  /** In which the numbers of what is refused are told: the notebook's. */
  decimal: 'point' | 'comma';
}

export type DelayMethod =
  | { method: 'fixed_level'; volts: number }
  | { method: 'constant_fraction'; fraction: number }
  | { method: 'edge_line' }
  | { method: 'cross_correlation'; refined: boolean };
export type Flag =
  | { flag: 'inverted' | 'noisy' | 'rough' }
  | { flag: 'double_edge' | 'not_quiet'; sample: number }
  | { flag: 'drift'; volts: string }
  | { flag: 'correlated_noise' | 'few_on_edge'; samples: number };
export interface Edge {
  time: number; uncertainty: number; slope: number; jitter: number; level: number; baseline: number; sigma: number;
  height: number; height_uncertainty: number; rise: number; sample: number; flags: Flag[];
}
export interface Delay { delay: number; uncertainty: number; edges: [Edge, Edge] }
/** Why a trace gives no time: `problem` is the reason with its numbers, `message` says it to a person. */
export interface TraceRefusal { detector: Detector; problem: { kind: string; [detail: string]: unknown }; message: string }
export interface Outcome { estimator: Estimator; method: DelayMethod; delay: Delay | null; refused: TraceRefusal | null }
/** A trace as it is drawn: least and greatest sample of each stretch. */
export interface Envelope { start: number; step: number; each: number; least: number[]; greatest: number[] }
export interface Drawn {
  quiet: [number, number]; baseline: number; sigma: number; top_level: number; top: [number, number]; height: number;
  region: [number, number];
}
export interface Side { drawn: Drawn | null; refused: TraceRefusal | null; envelope: Envelope | null }
/** Everything of a pair of traces. */
export interface Measured {
  /** One for each estimator. */
  outcomes: Outcome[];
  level: number | null;
  /** Fixed level less constant fraction, and its standard uncertainty. */
  walk: [number, number] | null;
  sides: [Side, Side];
  /** The same as the notebook keeps it; nothing where no estimator gives a delay, and then why. */
  evidence: Traces | null;
  refusal: string;
}
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
  refused: Thrown | null;
  /** Pairs finished so far, and pairs in all. */
  done: number;
  all: number;
}

/* Pictures. */

export interface Point { x: number; y: number }
/** A grid crossing: column along the time axis, row downwards, divisions. */
export interface Corner { at: Point; column: number; row: number }
export interface ProposedEdge { at: Point; divisions: [number, number]; base: number; peak: number; confidence: number }
/** Marks proposed, for a person to accept or to move. */
export interface PictureProposal {
  corners: [Corner, Corner, Corner, Corner];
  centre: Corner;
  sides: [Corner, Corner];
  confidence: number;
  edges: [ProposedEdge | null, ProposedEdge | null];
}
/** How a picture's grid lies beside corner marks made on another picture; `holds`: the marks serve this one too. */
export interface Standing { shift: [number, number]; largest: number; divisions: number; seen: number; holds: boolean }
/** A picture as it is kept: turned upright, scaled down, and without what the camera wrote beside the pixels. */
export interface Shrunk { blob: Blob; width: number; height: number; sha256: string }

/* What the worker is asked, and what it answers. */

export type Picture = Blob | ImageBitmap;
/** A picture goes with a number, by which the worker knows whether it keeps its copy. */
export interface Calls {
  look_at(file: File, known: Known, layout: Layout | undefined): LookedAt;
  common_level(levels: number[]): number | null;
  measure(files: TraceFile[], asked: Asked, keep: boolean): MeasuredFiles;
  /** Pairs whose files are handed over one after the other as a whole. */
  measure_all(whole: Blob, pairs: FilePart[][], asked: Asked): MeasuredPart[];
  envelope(side: Detector, from: number, to: number, points: number): Envelope;
  pair(names: string[]): Pair[];
  rail_reading(names: string[], rails: string[]): Named[];
  pack(names: string[], contents: Uint8Array<ArrayBuffer>[]): Uint8Array<ArrayBuffer>;
  unpack(bundle: Blob): [string, Uint8Array<ArrayBuffer>][];
  shrink(file: File): Shrunk;
  propose(picture: Picture, number: number, columns: number, rows: number): PictureProposal;
  check_series(
    picture: Picture, number: number, corners: Corner[], u_pixels: number, columns: number, rows: number,
  ): Standing;
}
/** A file among others that are handed over as a whole. */
export interface FilePart { name: string; size: number; layout: Layout | undefined }
/** What a trace file holds. */
export interface Content { name: string; layout: Layout | undefined; bytes: Uint8Array<ArrayBuffer>; sha256: string }
/** One of many pairs; `thrown` where it was refused. */
export interface MeasuredPart { found: MeasuredFiles | null; thrown: WorkerRefusal | null }
/** A refusal of the wasm's, in words, or the worker's own, by the name of a file. */
export type WorkerRefusal = Thrown & { name?: string };
export type Call = keyof Calls;
export type Task = { core: WebAssembly.Module } | { id: number; call: Call; values: unknown[] };
/** `crashed` where the worker can't go on: `why` is empty where the browser does not say. */
export type Answer =
  | { started: true }
  | { id: number; value: unknown }
  | { id: number; thrown: WorkerRefusal }
  | { crashed: true; why: string };

/** The exports of the second wasm (package `slope-worker`). */
export interface SlopeWorker {
  recognise_by(name: string, bytes: Uint8Array, known: Known): Layout;
  first_rows(bytes: Uint8Array, layout: Layout, most: number): string[][];
  common_level(levels: Float64Array): number | undefined;
  pair(names: string[]): Pair[];
  rail_reading(name: string, rails: string[]): Named;
  sha256(bytes: Uint8Array): string;
  pack(names: string[], contents: Uint8Array[]): Uint8Array<ArrayBuffer>;
  /** Name and bytes of each entry in turn. */
  unpack(bytes: Uint8Array): (string | Uint8Array<ArrayBuffer>)[];
  check_picture(name: string, bytes: Uint8Array, more: boolean): { width: number; height: number } | undefined;
  Look: { new (width: number, height: number): Look };
  Reading: { new (decimal: 'point' | 'comma'): Reading };
}
/** A small copy of a picture, made of one band of its rows after the other. */
export interface Look {
  /** Rows of a band: a multiple of this, or all that are left. */
  rows(): number;
  add(band: Uint8Array): void;
  propose(columns: number, rows: number): PictureProposal;
  check_series(corners: Corner[], u_pixels: number, columns: number, rows: number): Standing;
  free(): void;
}
/** One recording, or A's and B's. */
export interface Reading {
  add(name: string, bytes: Uint8Array, layout: Layout | undefined, sha256: string): Layout;
  measure(asked: Asked): Measured;
  envelope(side: Detector, from: number, to: number, points: number): Envelope;
  free(): void;
}
