/** One sentence in both unit systems. */
export interface SystemText {
  /** With inches or feet. */
  readonly us: string;
  /** With millimetres or metres. */
  readonly metric: string;
}

/** A sentence without figures, the same in both systems. Internal. */
export const inBothSystems = (text: string): SystemText => ({ us: text, metric: text });
