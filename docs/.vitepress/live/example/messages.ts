/** What a line of an example gives, beside what was written after `//=>`. */
export interface LineResult {
  /** Line of the result, counted from 1. */
  readonly line: number;
  /** True if it gives what was written. */
  readonly isEqual: boolean;
  /** What it gives now, as a reader of code would write it. */
  readonly shown: string;
  /** What was written; text of the example. */
  readonly written: string;
}

/** A fault that the library found, or one of the code. */
export interface RunFault {
  readonly line: number | null;
  /** Code of a `SettlineError`; null for another error. */
  readonly code: string | null;
  /** Path of the field, as a person reads it. */
  readonly path: string;
  readonly message: string;
}

/** What the page asks the worker. */
export interface RunRequest {
  readonly id: number;
  readonly code: string;
}

/** What the worker says: that it is loaded, or what a run gave. */
export type WorkerAnswer =
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'done';
      readonly id: number;
      readonly lines: readonly LineResult[];
      readonly faults: readonly RunFault[];
    };
