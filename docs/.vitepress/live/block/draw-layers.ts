import type { BuildUp, Layer } from 'settline/build-up';
import { formatFor, type Length } from 'settline/units';

/** Heights above or below finished grade that a drawing of layers may show beside them. */
export interface LayersScene {
  readonly buildUp: BuildUp;
  readonly stringHeight?: Length;
  /** The existing surface above finished grade. */
  readonly surface?: Length;
  /** Thickness of old paving under the existing surface. */
  readonly removed?: Length;
}

interface Label {
  readonly y: number;
  readonly lines: readonly string[];
}

const MARGIN = 26;
const TALL = 250;
const LINE = 16;
/** Widest page that counts as narrow, in pixels. */
const NARROW = 420;
const FILL: Readonly<Record<string, string>> = {
  paver: 'var(--layer-paver)',
  bedding: 'var(--layer-sand)',
};

const metres = (value: Length | undefined): number => value?.toNumber('m') ?? 0;

const escape = (words: string): string =>
  words.replace(/[&<>"]/g, (letter) => `&#${letter.charCodeAt(0)};`);

const line = (name: string, [x1, y1]: readonly number[], [x2, y2]: readonly number[]): string =>
  `<line class="${name}" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`;

/** Both systems, in one line or in two where there is little room. */
const amount = (words: string, value: Length, isNarrow: boolean): string[] => {
  const [us, metric] = [formatFor(value, 'us'), formatFor(value, 'metric')];
  return isNarrow ? [words, `${us} (${metric})`] : [`${words} ${us} (${metric})`];
};

/** Moves labels down until none lies on another. */
function spread(labels: readonly Label[]): Label[] {
  const placed: Label[] = [];
  for (const label of [...labels].sort((a, b) => a.y - b.y)) {
    const before = placed.at(-1);
    const least = before ? before.y + before.lines.length * LINE + 2 : label.y;
    placed.push({ ...label, y: Math.max(label.y, least) });
  }
  return placed;
}

function labelText({ y, lines }: Label, x: number): string {
  const spans = lines.map(
    (words, index) => `<tspan x="${x}" y="${y + 4 + index * LINE}">${escape(words)}</tspan>`,
  );
  return `<text>${spans.join('')}</text>`;
}

/** The measure from the string straight down to the subgrade. */
const measure = (x: number, from: number, to: number): string =>
  [
    line('measure', [x, from], [x, to]),
    line('measure', [x - 5, from + 5], [x + 5, from - 5]),
    line('measure', [x - 5, to + 5], [x + 5, to - 5]),
  ].join('');

/** Draws layers to scale with what is measured from above; every figure is the library's. */
export function drawLayers(
  { buildUp, stringHeight, surface, removed }: LayersScene,
  width: number,
): string {
  const isNarrow = width < NARROW;
  const top = Math.max(0, metres(stringHeight), metres(surface));
  const scale = TALL / (top + metres(buildUp.total));
  const y = (below: number): number => Math.round((MARGIN + (top + below) * scale) * 100) / 100;
  const left = stringHeight ? 26 : 10;
  const right = Math.round(Math.min(width * (isNarrow ? 0.42 : 0.45), 300));
  const bottom = y(metres(buildUp.total));
  const band = (layer: Layer): string => {
    const from = y(metres(layer.top));
    const fill = FILL[layer.name] ?? 'var(--layer-stone)';
    return `<rect class="band" x="${left}" y="${from}" width="${right - left}" height="${y(metres(layer.bottom)) - from}" style="fill:${fill}"/>`;
  };
  const ground = y(-metres(surface));
  const thick = metres(removed) * scale;
  const old =
    thick > 0
      ? `<rect class="old" x="${right - 46}" y="${ground}" width="46" height="${thick}"/>`
      : '';
  const string = y(-metres(stringHeight));
  const labels = spread([
    ...buildUp.layers.map((layer) => ({
      y: (y(metres(layer.top)) + y(metres(layer.bottom))) / 2,
      lines: amount(layer.name, layer.thickness, isNarrow),
    })),
    {
      y: bottom,
      lines: stringHeight
        ? amount('string to subgrade', stringHeight.plus(buildUp.total), isNarrow)
        : amount('subgrade, below finish', buildUp.total, isNarrow),
    },
    ...(stringHeight
      ? [{ y: string, lines: amount('string above finish', stringHeight, isNarrow) }]
      : []),
    ...(removed && thick > 0 && metres(surface) !== 0
      ? [{ y: ground - LINE / 2, lines: ['existing surface'] }]
      : []),
  ]);
  const parts = [
    ...buildUp.layers.map(band),
    old,
    line('finish', [left, y(0)], [right, y(0)]),
    ...(stringHeight
      ? [line('string', [4, string], [right, string]), measure(13, string, bottom)]
      : []),
    ...(metres(surface) === 0 ? [] : [line('surface', [left, ground], [right, ground])]),
    ...labels.map((label) => labelText(label, right + 10)),
  ];
  const last = labels.at(-1);
  const height = Math.max(TALL + 2 * MARGIN, (last ? last.y + last.lines.length * LINE : 0) + 10);
  return `<svg xmlns="http://www.w3.org/2000/svg" class="layers" role="img" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"><title>Layers to scale</title>${parts.join('')}</svg>`;
}
