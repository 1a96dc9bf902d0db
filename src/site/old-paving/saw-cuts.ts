import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { sum } from '../../units/aggregate.js';
import { length, type LengthInput } from '../../units/construct.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import type { Area, Length } from '../../units/quantity.js';
import { LENGTH } from '../limits.js';

/** What is to be sawn. */
export interface SawCutsInput {
  /** Cuts round the edge, where old paving stays. */
  readonly runs?: readonly LengthInput[];
  /** Cuts across a rectangle, into pieces that can be lifted. */
  readonly grid?: {
    readonly along: LengthInput;
    readonly across: LengthInput;
    readonly mostPiece: LengthInput;
  };
}

/** Saw cuts through old paving. */
export interface SawCuts {
  readonly length: Length;
  readonly runs: Length;
  readonly grid: Length;
  /** Pieces that the grid makes; 1 without a grid. */
  readonly pieces: number;
  /** Length times thickness: what wears the blade. */
  readonly face: Area;
}

const NONE = length(0, 'm');

/**
 * Reads saw cuts; gives a function of the thickness, or undefined where none are asked for. A
 * rectangle cut into n by m pieces takes n - 1 cuts across and m - 1 along. Internal.
 */
export function readSawCuts(
  reader: Reader,
  value: unknown,
  path: FieldPath,
): ((thickness: Length) => SawCuts) | undefined {
  if (value === undefined) return undefined;
  const fields = reader.object(value, path);
  const given = fields['runs'] === undefined ? [] : reader.list(fields['runs'], [...path, 'runs']);
  const lengths = given.map((item, index) =>
    reader.quantity('length', item, [...path, 'runs', index], LENGTH),
  );
  const grid = fields['grid'] === undefined ? undefined : readGrid(reader, fields['grid'], path);
  return (thickness) => {
    const runs = sum([NONE, ...lengths]);
    const { cuts, pieces } = grid?.() ?? { cuts: NONE, pieces: 1 };
    const total = runs.plus(cuts);
    return { length: total, runs, grid: cuts, pieces, face: total.times(thickness) };
  };
}

function readGrid(reader: Reader, value: unknown, at: FieldPath) {
  const path = [...at, 'grid'];
  const fields = reader.object(value, path);
  const read = (name: 'along' | 'across' | 'mostPiece') =>
    reader.quantity('length', fields[name], [...path, name], LENGTH);
  const [along, across, most] = [read('along'), read('across'), read('mostPiece')];
  return () => {
    const columns = wholeNumberUp(along, most);
    const rows = wholeNumberUp(across, most);
    const cuts = across.times(columns - 1).plus(along.times(rows - 1));
    return { cuts, pieces: columns * rows };
  };
}
