import type { DrawStyle } from '../draw-options.js';
import type { Picture } from '../frame/frame-drawing.js';
import { hatchFill } from '../frame/hatches.js';
import { coordinateText } from '../svg/coordinate-text.js';
import { element } from '../svg/element.js';
import { polygon, polyline, rectangle, type Point } from '../svg/shapes.js';
import { bandMarks } from './profile-band.js';
import type { ProfileFigures, ProfileStake } from './profile-figures.js';
import { earthAreas, groundWithin, type Place } from './profile-ground.js';
import type { Strip, Strips } from './profile-strips.js';

/** Where a strip is drawn. */
interface Strung {
  readonly strip: Strip;
  readonly figures: ProfileFigures;
  readonly prefix: string;
  readonly at: (place: Place) => Point;
}

const HEAD = 18;
const FOOT = 16;

/** One strip of a profile: the picture, and the figures of its stakes below. Internal. */
export function stripMarks(
  strip: Strip,
  {
    figures,
    scale: { pixelsPerMetre, factor, column },
    top,
    prefix,
    style,
  }: {
    readonly figures: ProfileFigures;
    readonly scale: Strips;
    readonly top: number;
    readonly prefix: string;
    readonly style: DrawStyle;
  },
): Picture {
  const down = pixelsPerMetre * factor;
  const y = (elevation: number): number => top + HEAD + (strip.high - elevation) * down;
  const strung: Strung = {
    strip,
    figures,
    prefix,
    at: ([station, elevation]) => [strip.x(station), y(elevation)],
  };
  const bottom = y(strip.low) + FOOT;
  const band = bandMarks(strip, { figures, bottom, column, style });
  return {
    marks: [
      ...earthMarks(strung),
      ...surfaceMarks(strung),
      ...endBars(strung),
      ...band.leaders,
      ...strip.stakes.map((stake) => stakeMark(stake, strung)),
      stringMark(strung),
      ...band.marks,
    ],
    bottom: band.bottom,
  };
}

/** A surface at a depth below the string along a strip. */
const surface = ({ strip }: Strung, depth: number): Place[] =>
  strip.stakes.map(({ station, string }) => [station, string - depth]);

function earthMarks(strung: Strung): string[] {
  const { figures, strip, at, prefix } = strung;
  const [from, to] = [strip.stakes[0]?.station ?? 0, strip.stakes.at(-1)?.station ?? 0];
  const ground = groundWithin(figures.stakes, from, to);
  if (ground.length === 0) return [];
  const areas = earthAreas(ground, surface(strung, figures.subgrade));
  return [
    ...areas.map(({ isFill, corners }) =>
      polygon('bare', corners.map(at), hatchFill(isFill ? 'fill' : 'cut', prefix)),
    ),
    ...(ground.length < 2 ? [] : [polyline('old', ground.map(at))]),
    ...strip.stakes.flatMap(({ station, ground: own }) =>
      own === null ? [] : [reading(at([station, own]))],
    ),
  ];
}

/** A ground reading. */
const reading = ([cx, cy]: Point): string => element('circle', { class: 'solid', cx, cy, r: 3 });

/** Finished grade, the layers and the subgrade. */
function surfaceMarks(strung: Strung): string[] {
  const { figures, at } = strung;
  if (strung.strip.stakes.length < 2) return [];
  const along = (style: string, depth: number): string =>
    polyline(style, surface(strung, depth).map(at));
  return [
    ...figures.layers.slice(1).map(({ top }) => along('edge', top)),
    along('dig', figures.subgrade),
    along('finish', figures.finish),
  ];
}

const BAR = 14;
const BESIDE = 8;

/** The layers with their hatches, as bars beyond the first and the last stake. */
function endBars({ strip, figures, prefix, at }: Strung): string[] {
  const ends = [
    { stake: strip.stakes[0], shift: -BESIDE - BAR },
    { stake: strip.stakes.at(-1), shift: BESIDE },
  ];
  return ends.flatMap(({ stake, shift }) =>
    stake === undefined
      ? []
      : figures.layers.map(({ top, bottom, hatch }) => {
          const [x, y] = at([stake.station, stake.string - top]);
          const [, low] = at([stake.station, stake.string - bottom]);
          const box = { x: x + shift, y, width: BAR, height: low - y };
          return rectangle('area', box, hatchFill(hatch, prefix));
        }),
  );
}

const HALF = 4;

/** A stake from above the string into the ground, or to finished grade where no ground was measured. */
function stakeMark({ station, string, ground }: ProfileStake, { figures, at }: Strung): string {
  const [x, y] = at([station, string]);
  const [, foot] = at([station, Math.min(ground ?? string - figures.finish, string)]);
  return polygon('stake', [
    [x - HALF, y - 10],
    [x + HALF, y - 10],
    [x + HALF, foot],
    [x, foot + 10],
    [x - HALF, foot],
  ]);
}

/** The string, hanging between its stakes. */
function stringMark({ strip, at }: Strung): string {
  const points = strip.stakes.map(({ station, string }) => at([station, string]));
  const path = strip.stakes.map(({ station, string, sag }, index) => {
    const next = strip.stakes[index + 1];
    if (next === undefined) return '';
    // a parabola through the middle of its sag: the point that steers it hangs twice as low
    const middle: Place = [(station + next.station) / 2, (string + next.string) / 2 - 2 * sag];
    return `Q${pair(at(middle))} ${pair(points[index + 1] ?? at(middle))}`;
  });
  return element('path', {
    class: 'string',
    d: `M${pair(points[0] ?? [0, 0])}${path.join('')}`,
    fill: 'none',
  });
}

const pair = ([x, y]: Point): string => `${coordinateText(x)},${coordinateText(y)}`;
