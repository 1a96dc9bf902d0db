import { expect, test } from 'vitest';
import { SOURCES, type SourceId, type SourceStatus } from 'settline/sources';
import { recordFigures, type CheckedFigure, type CheckKind } from '../printed.js';
import { PUBLICATIONS, type PublicationId } from './publications.js';

/** Where a check stands, and how its answers came about. */
export interface Citation {
  /** A source of the library, or a publication that only a check cites. */
  readonly source: SourceId | PublicationId;
  readonly section: string;
  /** The kind of its answers; misprints say so themselves. */
  readonly kind: Exclude<CheckKind, 'misprint'>;
}

/** A check as it is recorded: its citation, and every figure that it compared. */
export interface PublishedCheck extends Citation {
  readonly title: string;
  /** Whether the publication was read: the status of its source. */
  readonly status: SourceStatus;
  readonly figures: readonly CheckedFigure[];
}

declare module 'vitest' {
  interface TaskMeta {
    published?: PublishedCheck;
  }
}

/** A test against a figure that others published. A check that compares nothing fails. */
export function published(citation: Citation, name: string, check: () => unknown): void {
  publishedEach(citation, [name])('%s', () => check());
}

/** The same for each of some cases, which the name shows by `%s`. */
export function publishedEach<const T>(citation: Citation, cases: readonly T[]) {
  return (name: string, check: (given: T) => unknown): void => {
    const publication = publicationOf(citation.source);
    test.for(cases)(name, async (given, { task }) => {
      const figures: CheckedFigure[] = [];
      task.meta.published = { ...citation, ...publication, figures };
      await recordFigures(citation.kind, figures, () => check(given));
      expect(figures.length, 'this check compares no figure').toBeGreaterThan(0);
    });
  };
}

/** Title and status of a source. */
function publicationOf(id: Citation['source']): { title: string; status: SourceStatus } {
  const known: Readonly<Record<string, { title: string; status: SourceStatus }>> = {
    ...PUBLICATIONS,
    ...SOURCES,
  };
  const found = known[id];
  if (found === undefined) throw new Error(`no source has the id ${id}`);
  return { title: found.title, status: found.status };
}
