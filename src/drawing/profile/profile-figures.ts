import { tapeOfSheet } from '../../job/sheet/layout/tape-of-sheet.js';
import type { PavementPlan, StakePlan, StringLinePlan } from '../../job/plan/plan.js';
import { groundRows } from '../../job/sheet/sections/depth-rows.js';
import { sagText } from '../../job/sheet/words/sag-text.js';
import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { fitText } from '../svg/text-width.js';
import { groundLine, type Place } from './profile-ground.js';
import {
  labelName,
  layerMarks,
  surfaceRows,
  type LayerMark,
  type SurfaceRow,
} from '../surface-rows.js';

/** A stake of a profile. Lengths in metres. Internal. */
export interface ProfileStake {
  readonly name: string;
  readonly station: number;
  /** Elevation of the string; 0 where the profile is drawn below a level string. */
  readonly string: number;
  /** Elevation of the existing surface; null where it was not measured. */
  readonly ground: number | null;
  /** How far the string hangs low on the way to the next stake. */
  readonly sag: number;
}

/** A row of figures below a profile: one at each stake, or between stakes. Internal. */
export interface BandRow {
  readonly key: DrawingLabelKey;
  readonly isBetween: boolean;
  readonly cells: readonly string[];
}

/** What a profile shows. Internal. */
export interface ProfileFigures {
  readonly stakes: readonly ProfileStake[];
  readonly band: readonly BandRow[];
  readonly surfaces: readonly SurfaceRow[];
  readonly layers: readonly LayerMark[];
  readonly finish: number;
  readonly subgrade: number;
  /** True where it is drawn by elevations. */
  readonly isLevelled: boolean;
  readonly isMeasured: boolean;
  /** The existing surface where it was measured. */
  readonly groundLine: readonly Place[];
  /** True where it is known over a length. */
  readonly hasGroundLine: boolean;
}

/** The figures of a profile, as the sheet prints them. Internal. */
export function profileFigures(
  line: StringLinePlan,
  pavement: PavementPlan,
  style: DrawStyle,
): ProfileFigures {
  const stakes = [...line.stakes].sort((a, b) => a.station.compare(b.station));
  const isLevelled = stakes.every(({ stringElevation }) => stringElevation !== null);
  const height = line.stringHeight;
  const drawn = stakes.map((stake, index) =>
    profileStake(stake, { next: stakes[index + 1], line, isLevelled }),
  );
  const ground = groundLine(drawn);
  return {
    stakes: drawn,
    band: bandRows(stakes, line, style),
    surfaces: surfaceRows(pavement, height, style),
    layers: layerMarks(pavement, height, style),
    finish: height.toNumber('m'),
    subgrade: height.plus(pavement.buildUp.total).toNumber('m'),
    isLevelled,
    groundLine: ground,
    isMeasured: ground.length > 0,
    hasGroundLine: ground.length > 1,
  };
}

function profileStake(
  { id, station, stringElevation, ground }: StakePlan,
  {
    next,
    line,
    isLevelled,
  }: {
    readonly next: StakePlan | undefined;
    readonly line: StringLinePlan;
    readonly isLevelled: boolean;
  },
): ProfileStake {
  const string = isLevelled ? (stringElevation?.toNumber('m') ?? 0) : 0;
  return {
    name: labelName(id),
    station: station.toNumber('m'),
    string,
    ground: ground === null ? null : string - ground.toNumber('m'),
    sag: sagBetween(line, id, next?.id)?.toNumber('m') ?? 0,
  };
}

/** The sag between two stakes that stand next to each other. */
const sagBetween = ({ sags }: StringLinePlan, a: string, b: string | undefined) =>
  sags.find(({ from, to }) => (from === a && to === b) || (from === b && to === a))?.sag ?? null;

/** Longest word for a figure that is missing, in type sizes. */
const LONGEST_WORD = 4;

/** The rows of figures: those that no stake has a figure for are left out. */
function bandRows(stakes: readonly StakePlan[], line: StringLinePlan, style: DrawStyle): BandRow[] {
  const { units, label, system } = style;
  const tape = tapeOfSheet(system);
  const none = fitText(label('not-measured'), 1, LONGEST_WORD);
  const grounds = new Map(groundRows(stakes, tape.onTape).map((row) => [row.id, row]));
  const row = (
    key: DrawingLabelKey,
    text: (stake: StakePlan, index: number) => string | null,
  ): BandRow => ({
    key,
    isBetween: key === 'row-sag',
    cells: stakes.map((stake, index) => text(stake, index) ?? none),
  });
  const depth = (id: string, name: 'ground' | 'dig'): string | null => {
    const of = grounds.get(id);
    return of === undefined ? null : units.depth(of[name]);
  };
  const level = (value: StakePlan['finishElevation']) =>
    value === null ? null : tape.level(value);
  const rows = [
    row('row-string-elevation', ({ stringElevation }) => level(stringElevation)),
    row('row-finish-elevation', ({ finishElevation }) => level(finishElevation)),
    row('row-ground', ({ id }) => depth(id, 'ground')),
    row('row-dig', ({ id }) => depth(id, 'dig')),
    row('row-sag', ({ id }, index) => {
      const sag = sagBetween(line, id, stakes[index + 1]?.id);
      return sag === null ? null : sagText(sag, { ...units, ...tape });
    }),
  ];
  return [
    row('row-stake', ({ id }) => labelName(id)),
    row('row-station', ({ station }) => units.long(station)),
    ...rows.filter(({ cells }) => cells.some((cell) => cell !== none)),
  ];
}
