/** How far a figure can be traced. */
export type SourceStatus =
  /** Read in the named publication, or in a copy of it that the title or section names. */
  | 'read'
  /**
   * Written down from memory, or read in a text whose printed title is not known, so it cannot be
   * looked up. Confirm it before use.
   */
  | 'memory'
  /** Common practice in the trade, without a publication. */
  | 'common-practice'
  /** Geometry or arithmetic that needs no publication. */
  | 'derived';

/**
 * A part of a publication, or the note that there is none. Every figure that cites the source has
 * its status. If one part of a publication was read and another was not, each part has its own id.
 */
export interface Source {
  /** Title as printed; in brackets, who published it or which copy was read. */
  readonly title: string;
  /** Clause, page, table or figure. */
  readonly section: string;
  /** Whether this part was read. */
  readonly status: SourceStatus;
}

/** Makes a source, by default with the status `read`. Internal. */
export const source = (title: string, section: string, status: SourceStatus = 'read'): Source =>
  Object.freeze({ title, section, status });
