import type { Step } from 'settline';
import type { Outcome } from 'settline/errors';
import type { Json, JsonObject, Path } from '../page/json-text.js';

/** A field of a form. */
export interface EntryField {
  readonly kind: 'entry';
  readonly path: Path;
  readonly label: string;
  /** What to write, with an example or the range. */
  readonly hint?: string;
  /** True for a field that may be left empty: it is then left out of the options. */
  readonly isOptional?: boolean;
  /** True for a plain number, which stands in the options as a number. */
  readonly isNumber?: boolean;
}

/** A field with a few words to choose from. */
export interface ChoiceField {
  readonly kind: 'choice';
  readonly path: Path;
  readonly label: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
}

/** A field for yes or no. */
export interface FlagField {
  readonly kind: 'flag';
  readonly path: Path;
  readonly label: string;
}

/** A list of entries, one to a row: `path` of a column starts at the entry. */
export interface RowsField {
  readonly kind: 'rows';
  readonly path: Path;
  readonly label: string;
  /** What one entry is called. */
  readonly one: string;
  readonly columns: readonly (EntryField | ChoiceField)[];
  /** What a new row starts with; `index` counts from 0. */
  readonly fresh: (index: number) => Json;
}

/** Any field of a form. */
export type Field = EntryField | ChoiceField | FlagField | RowsField;

/** What a block shows of a calculation. */
export interface BlockResult {
  /** The answer in one sentence, in both unit systems. */
  readonly answer: string;
  /** What the library returned: shown in tables. */
  readonly result: object;
  readonly working: readonly Step[];
  readonly notes: readonly string[];
  readonly cautions: readonly { readonly text: string }[];
  /** Makes the drawing for a width in pixels; null where there is none. */
  readonly draw: ((width: number) => Promise<string> | string) | null;
}

/** A form in front of one calculation of the library. */
export interface Block {
  readonly title: string;
  /** The functions that are called. */
  readonly calls: readonly string[];
  readonly fields: readonly Field[];
  /** What the block starts with. */
  readonly options: JsonObject;
  /** Calls the library with the options as they were typed. */
  readonly run: (options: JsonObject) => Outcome<BlockResult>;
}

/** A field to write into. */
export const entry = (
  path: Path | string,
  label: string,
  more: Omit<EntryField, 'kind' | 'path' | 'label'> = {},
): EntryField => ({
  kind: 'entry',
  path: typeof path === 'string' ? [path] : path,
  label,
  ...more,
});

/** What a result of the library carries beside its values. */
interface Carried {
  readonly working?: readonly Step[];
  readonly note?: unknown;
  readonly notes?: readonly string[];
  readonly cautions?: readonly { readonly text: string }[];
}

/** The parts of a result that stand in places of their own. */
export function shownResult(
  result: object,
  answer: string,
  draw: BlockResult['draw'] = null,
): BlockResult {
  const { working = [], note, notes = [], cautions = [] } = result as Carried;
  return {
    answer,
    result,
    working,
    notes: [...(typeof note === 'string' && note !== answer ? [note] : []), ...notes],
    cautions,
    draw,
  };
}
