import type { SourceId } from './catalogue.js';

/** A row of the silica table. */
export interface SilicaControl {
  /** The tool it applies to. */
  readonly equipment: string;
  /** Indoors or outdoors. */
  readonly place: 'outdoors' | 'indoors or enclosed' | 'anywhere';
  /** Dust control. */
  readonly control: string;
  /** Minimum assigned protection factor of a respirator; null if none is required. */
  readonly respirator: {
    /** Protection for up to 4 hours a shift. */
    readonly upTo4Hours: number | null;
    /** Protection for more than 4 hours a shift. */
    readonly over4Hours: number | null;
  };
  /** Where it is printed. */
  readonly source: SourceId;
}

const WATER =
  'water fed to the blade continuously by a built-in system, used as its maker instructs';

const row = (
  equipment: string,
  place: SilicaControl['place'],
  upTo4Hours: number | null,
  over4Hours: number | null,
): SilicaControl =>
  Object.freeze({
    equipment,
    place,
    control: WATER,
    respirator: Object.freeze({ upTo4Hours, over4Hours }),
    source: 'silica-table-1',
  });

/**
 * Saws in Table 1 of the silica rule: dust control and respirator, by hours in a shift. Data, not
 * advice: the rule has more rows and more conditions. Source: `silica-table-1`.
 */
export const SILICA_CONTROLS: readonly SilicaControl[] = Object.freeze([
  row('stationary masonry saw', 'anywhere', null, null),
  row('hand-held power saw', 'outdoors', null, 10),
  row('hand-held power saw', 'indoors or enclosed', 10, 10),
  row('walk-behind saw', 'outdoors', null, null),
  row('walk-behind saw', 'indoors or enclosed', 10, 10),
]);
