/** What `planJobs` needs of an `AbortSignal`. */
export interface StopSignal {
  /** True once it was stopped. */
  readonly aborted: boolean;
  /** Why; it is thrown as it is. */
  readonly reason: unknown;
  /** Listens for the stop. */
  addEventListener(type: 'abort', listener: () => void): void;
  /** Listens no more. */
  removeEventListener(type: 'abort', listener: () => void): void;
}
