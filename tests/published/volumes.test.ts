// The cases of "Surveying and Levelling" are the computed output of its open companion notebooks,
// not the page of the book.
import { describe, expect } from 'vitest';
import { outlineArea } from 'settline/outline';
import { surfaceVolumes } from 'settline/geometry';
import {
  averageEndArea,
  batteredDig,
  endAreaVolumes,
  gridVolumes,
  layerVolume,
  prismoidal,
  taperedLayer,
} from 'settline/volumes';
import { area } from 'settline/units';
import { expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

const squareMetres = (values: readonly number[]) => values.map((value) => area(value, 'm2'));

/** Simpson's rule over an odd number of even sections: the prismoidal rule over each pair of bays. */
function prismoidalOver(areas: readonly number[], bay: number): number {
  let total = 0;
  for (let k = 0; k + 2 < areas.length; k += 2) {
    const [first, middle, last] = squareMetres(areas.slice(k, k + 3));
    if (first === undefined || middle === undefined || last === undefined) break;
    total += prismoidal({ first, middle, last, length: `${2 * bay} m` }).toNumber('m3');
  }
  return total;
}

describe('Surveying and Levelling (textbook 1994, ISBN 978-0-07-460399-4)', () => {
  published(
    { source: 'surveying-and-levelling', section: 'p. 251, problem 10', kind: 'printed' },
    'p. 251 problem 10: two sections by coordinates, 50 m apart',
    () => {
      const sections = [
        [
          [-3, 0],
          [-5.5, 2.2],
          [-3, 1.75],
          [0, 1.5],
          [5.25, 4.75],
          [7.3, 6.4],
          [3, 0],
        ],
        [
          [-3, 0],
          [-5.25, 3.1],
          [-3, 2.2],
          [0, 2],
          [6, 5.25],
          [8.5, 7.4],
          [3, 0],
        ],
      ] as const;
      const areas = sections.map((points) => outlineArea({ outline: { unit: 'm', points } }).area);
      expectPrinted(areas[0]?.toNumber('m2') ?? 0, '21.1375');
      expectPrinted(areas[1]?.toNumber('m2') ?? 0, '25.9875');
      expectPrinted(averageEndArea({ areas, spacing: '50 m' }).toNumber('m3'), '1178.125');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 241, problem 1', kind: 'printed' },
    'p. 241 problem 1: level sections, end areas and Simpson',
    () => {
      const areas = [0.9, 1.25, 2.15, 2.5, 1.85, 1.35, 0.85].map((h) => (10 + 1.5 * h) * h);
      ['10.215', '14.84375', '28.43375', '34.375', '23.63375', '16.23375', '9.58375'].forEach(
        (printed, k) => expectPrinted(areas[k] ?? 0, printed),
      );
      const ends = averageEndArea({ areas: squareMetres(areas), spacing: '40 m' });
      expectPrinted(ends.toNumber('m3'), '5096.775');
      expectPrinted(prismoidalOver(areas, 40), '5143.25');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'pp. 241 and 242, problem 2', kind: 'printed' },
    'p. 241-242 problem 2: cut and fill crossing, wedges to the zero points',
    () => {
      const heights = [0.75, 1.15, 0.8, 1.3, 1.5, 0.75];
      const signs = ['cut', 'fill', 'cut', 'fill', 'cut', 'cut'] as const;
      const areas = heights.map((h) => (8 + 2 * h) * h);
      const sections = heights.flatMap((h, k) => {
        const here = { station: `${50 * k} m`, [signs[k] ?? 'cut']: area(areas[k] ?? 0, 'm2') };
        const next = heights[k + 1];
        if (next === undefined || signs[k] === signs[k + 1]) return [here];
        return [here, { station: `${50 * k + (50 * h) / (h + next)} m` }];
      });
      const zero = sections.filter((section) => !('cut' in section) && !('fill' in section));
      // the printed distances run from the section before
      ['19.736842', '29.487179', '19.047619', '23.214286'].forEach((printed, k) => {
        expectPrinted(Number.parseFloat(zero[k]?.station ?? '') - 50 * k, printed);
      });
      const strip = endAreaVolumes({ sections, runOut: 'wedge' });
      // the notebook went on with lengths rounded by hand to 0.01 (30.277 for 30.263)
      expectMisprint(strip.cut.toNumber('m3'), '1033.965', '1033.8317');
      expectMisprint(strip.fill.toNumber('m3'), '727.146', '727.0797');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 244, problem 3', kind: 'printed' },
    'p. 244 problem 3: level sections by Simpson',
    () => {
      const areas = [2.5, 1.25, 0.95, 1.65, 2.2, 2.85, 0.75].map((h) => (8 + h) * h);
      expectPrinted(areas[5] ?? 0, '30.9225');
      expectPrinted(prismoidalOver(areas, 50), '5472.125');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 245, problem 4', kind: 'printed' },
    'p. 245 problem 4: areas inside contours 5 m apart',
    () => {
      const areas = [2050, 8400, 16300, 24600, 31500];
      const ends = averageEndArea({ areas: squareMetres(areas), spacing: '5 m' });
      expectPrinted(ends.toNumber('m3'), '330375');
      expectPrinted(prismoidalOver(areas, 5), '330250');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 248, problem 8', kind: 'printed' },
    'p. 248 problem 8: three-level sections and the prismoidal correction',
    () => {
      const section = (h: number, up: number, down: number, wUp: number, wDown: number) =>
        (h / 2) * (wUp + wDown) + (9 / 4) * (up + down);
      const first = section(1, 2.55, 0.95, 7.5, 5.25);
      const last = section(1.5, 2.8, 1.35, 8.1, 4.75);
      expectPrinted(first, '14.25');
      expectPrinted(last, '18.975');
      const ends = averageEndArea({ areas: squareMetres([first, last]), spacing: '50 m' });
      expectPrinted(ends.toNumber('m3'), '830.625');
      // the printed correction is what the section of mean dimensions gives half way
      const middle = section(1.25, 2.675, 1.15, 7.8, 5);
      expectPrinted(prismoidalOver([first, middle, last], 25), '830.4166667');
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 249, problem 9', kind: 'printed' },
    'p. 249 problem 9: side-hill sections, half in cut and half in fill',
    () => {
      const cut = (h: number) => (5 + 5 * h) ** 2 / (2 * (5 - 1));
      const fill = (h: number) => (5 - 5 * h) ** 2 / (2 * (5 - 2));
      ['7.03125', '9.03125'].forEach((printed, k) => expectPrinted(cut(0.5 + 0.2 * k), printed));
      ['1.0416667', '0.375'].forEach((printed, k) => expectPrinted(fill(0.5 + 0.2 * k), printed));
      const ends = (of: (h: number) => number) =>
        averageEndArea({ areas: squareMetres([of(0.5), of(0.7)]), spacing: '50 m' }).toNumber('m3');
      expectPrinted(ends(cut), '401.5625');
      expectPrinted(ends(fill), '35.4166667');
      expectPrinted(prismoidalOver([0.5, 0.6, 0.7].map(cut), 25), '400.5208333');
      expectPrinted(prismoidalOver([0.5, 0.6, 0.7].map(fill), 25), '34.0277778');
    },
  );
});

describe('end areas', () => {
  published(
    { source: 'transport-wikibook', section: 'Earthwork, solution', kind: 'printed' },
    'Fundamentals of Transportation (open wikibook), Earthwork, Solution: pyramids at the ends',
    () => {
      const road = endAreaVolumes({
        sections: [
          { station: '0 m', fill: '60 m2' },
          { station: '50 m', fill: '50 m2' },
          { station: '75 m', fill: '25 m2', cut: '0 m2' },
          { station: '100 m', fill: '5 m2', cut: '10 m2' },
          { station: '115 m', fill: '0 m2', cut: '15 m2' },
          { station: '150 m', cut: '30 m2' },
        ],
      });
      expectPrinted(road.fill.toNumber('m3'), '4087.5');
      expectPrinted(road.cut.toNumber('m3'), '1058.3');
      expectPrinted(-road.net.toNumber('m3'), '3029.2');
    },
  );

  published(
    { source: 'earthwork-slides', section: 'example of two sections', kind: 'printed' },
    'Student earthwork slides, worked example of two sections',
    () => {
      expectPrinted((3 * 6 + 8 * 1.5 + 6.9 * 1.5 + 2 * 6) / 2, '26.175');
      const volume = averageEndArea({ areas: ['26.175 m2', '22.23 m2'], spacing: '50 m' });
      expectPrinted(volume.toNumber('m3'), '1210.125');
    },
  );

  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-9', kind: 'printed' },
    'Estimating in Building Construction, chapter 9, Example 9-9',
    () => {
      const volume = averageEndArea({ areas: ['114.3 ft2', '232.4 ft2'], spacing: '75 ft' });
      expectPrinted(volume.toNumber('ft3'), '13001');
      expectExact(volume.to('ft3').toString(), '13001.25');
    },
  );

  published(
    { source: 'navy-earthwork', section: 'earthwork estimate', kind: 'printed' },
    'NAVEDTRA 14080/14081, earthwork estimate: 1.85 yd3 for each ft2 and station of 100 ft',
    () => {
      const one = averageEndArea({ areas: ['1 ft2', '0 ft2'], spacing: '100 ft' });
      expectPrinted(one.toNumber('yd3'), '1.85');
    },
  );

  published(
    { source: 'railroad-handbook', section: 'article 109, second example', kind: 'derived' },
    "Railroad engineers' field handbook, 1857, article 109, second example (value derived)",
    () => {
      const level = (h: number) => area((22 + 1.5 * h) * h, 'ft2');
      const [first, middle, last] = [level(10), level(15), level(20)];
      const volume = prismoidal({ first, middle, last, length: '100 ft' });
      // (37 x 10 + 52 x 20 + 4 x 44.5 x 15) x 100 / 6
      expectExact(volume.to('ft3').toString(), '68000');
    },
  );
});

describe('grids', () => {
  const pit = {
    unit: 'm',
    rows: [
      [null, 4, 2, 4, null, null],
      [4, 3, 2, 3, 4, 5],
      [4, 3, 5, 2, 2, 3],
      [5, 4, 2, 2, 2, null],
      [null, 3, 1, 1, null, null],
    ],
  } as const;

  published(
    { source: 'borrow-pit-handout', section: 'worked grid example', kind: 'printed' },
    'Civil engineering handout on borrow-pit volumes, worked grid example',
    () => {
      const borrow = gridVolumes({ depths: pit, spacing: '10 m' });
      expectPrinted(borrow.cut.toNumber('m3'), '3775');
      expect(borrow.cells).toEqual({ whole: 13, partial: 0, mixed: 0 });
      expectExact(borrow.unusedPlaces, 0);
      // the printed sums of depths with one, two, three and four cells round them
      const around = (row: number, column: number) =>
        [0, 1].flatMap((r) =>
          [0, 1].filter((c) =>
            [0, 1].every((dr) =>
              [0, 1].every((dc) => {
                const at = pit.rows[row - 1 + r + dr]?.[column - 1 + c + dc];
                return at !== null && at !== undefined;
              }),
            ),
          ),
        ).length;
      const sums = [1, 2, 3, 4].map((used) =>
        pit.rows
          .flatMap((depths, row) =>
            depths.map((depth, column) => (around(row, column) === used ? (depth ?? 0) : 0)),
          )
          .reduce<number>((sum, depth) => sum + depth, 0),
      );
      expectExact(sums.map(String), ['31', '11', '14', '14']);
    },
  );

  published(
    {
      source: 'plane-survey-protocols',
      section: 'Triangular Base Method, formula',
      kind: 'derived',
    },
    'the same pit in triangles: 3800 m3 on one diagonal, 3750 on the other (derived)',
    () => {
      // each cell in two triangles (h1 + h2 + h3) s^2 / 6: Plane Survey protocols, University of
      // Melbourne, Triangular Base Method (formula only)
      const at = (row: number, column: number) => pit.rows[row]?.[column] ?? null;
      let [one, other] = [0, 0];
      for (let row = 0; row < 4; row += 1) {
        for (let column = 0; column < 5; column += 1) {
          const corners = [
            at(row, column),
            at(row, column + 1),
            at(row + 1, column + 1),
            at(row + 1, column),
          ];
          if (corners.includes(null)) continue;
          const half = (a: number, b: number, c: number) =>
            surfaceVolumes({
              existing: Float64Array.from(
                [a, b, c].flatMap((k) => [
                  k === 1 || k === 2 ? 10 : 0,
                  k > 1 ? 10 : 0,
                  corners[k] ?? 0,
                ]),
              ),
              design: { z0: 0, gradeX: 0, gradeY: 0 },
            }).cut;
          one += half(0, 1, 2) + half(0, 2, 3);
          other += half(0, 1, 3) + half(1, 2, 3);
        }
      }
      expectExact([one, other].map(Math.round).sort(), [3750, 3800]);
    },
  );

  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-6', kind: 'printed' },
    'Estimating in Building Construction, chapter 9, Example 9-6: the zero line',
    () => {
      // fill 0.3 ft at C, cut 0.7 ft at D, 50 ft apart: zero 15 ft from C
      const cell = gridVolumes({
        depths: {
          unit: 'ft',
          rows: [
            [-0.3, 0.7],
            [-0.3, 0.7],
          ],
        },
        spacing: '50 ft',
      });
      expectPrinted(cell.fillArea.toNumber('ft2') / 50, '15');
      // the fill over 1100 ft2 with corners 0.3, 0.4, 0 and 0
      const fill = gridVolumes({
        depths: {
          unit: 'ft',
          rows: [
            [-0.3, -0.4],
            [0, 0],
          ],
        },
        spacing: { x: '22 ft', y: '50 ft' },
      });
      expectPrinted(fill.fill.toNumber('ft3'), '192.5');
    },
  );
});

describe('digs', () => {
  const pitOf = (length: number, width: number, depth: number, horizontalPerVertical: number) =>
    batteredDig({
      outline: {
        unit: 'ft',
        points: [
          [0, 0],
          [length, 0],
          [length, width],
          [0, width],
        ],
      },
      depth: `${depth} ft`,
      horizontalPerVertical,
    }).volume.toNumber('ft3');
  const average = (length: number, width: number, depth: number) =>
    layerVolume({
      area: area(length, 'ft2').times(width),
      thickness: `${depth} ft`,
    }).toNumber('ft3');

  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-14', kind: 'printed' },
    'Estimating in Building Construction, Example 9-14: average dimensions',
    () => {
      // 26 ft 1 in by 32 ft 4 in, 1 ft footing and 1 ft work space a side, 8 ft deep, 2 up on 1 out
      const [length, width] = [32 + 1 / 3 + 4, 26 + 1 / 12 + 4];
      expectExact(Math.floor(average(length + 4, width + 4, 8)), 10997);
      // what the sloped sides really hold: the printed method is 0.4 % short
      expectMisprint(pitOf(length, width, 8, 0.5), '10997', '11040.22');
    },
  );

  published(
    { source: 'estimating-test-item', section: 'excavation item', kind: 'printed' },
    'Construction estimating test item: average dimensions',
    () => {
      const [length, width] = [34 + 2 * (11 / 12) + 4, 22 + 2 * (11 / 12) + 4];
      const between = 10 / 1.5;
      expectExact(Math.floor(average(46.5, 34.5, 10)), 16042);
      expectPrinted(length + between, '46.5');
      expectMisprint(pitOf(length, width, 10, 1 / 1.5), '16042', '16190.6');
    },
  );

  published(
    { source: 'trench-question', section: 'word problem', kind: 'printed' },
    'Worked question on a trench: 7 ft at the top, 4 ft at the bottom, 12 ft deep, 180 ft long',
    () => {
      const ends = averageEndArea({ areas: ['66 ft2', '66 ft2'], spacing: '180 ft' });
      expectPrinted(ends.toNumber('ft3'), '11880');
      expectPrinted(ends.toNumber('yd3'), '440');
    },
  );

  published(
    { source: 'estimating-slides', section: 'trench example', kind: 'printed' },
    'Construction estimating lecture slides: trench with cutback, 5 ft to 7 ft deep',
    () => {
      // the printed width is a mean: the trench of one width and a tapering depth
      const trench = taperedLayer({
        length: '100 ft',
        width: '11 ft',
        thickness: '5 ft',
        lastThickness: '7 ft',
      });
      expectPrinted(trench.volume.toNumber('ft3'), '6600');
      expectPrinted(trench.volume.toNumber('yd3'), '244');
      expectPrinted((trench.volume.toNumber('ft3') - 1000) / 27, '207.4');
    },
  );

  published(
    { source: 'estimating-slides', section: 'basement example', kind: 'printed' },
    'Construction estimating lecture slides: basement by its corner depths',
    () => {
      const cell = gridVolumes({
        depths: {
          unit: 'ft',
          rows: [
            [5.83, 4.17],
            [4.67, 3.33],
          ],
        },
        spacing: '40 ft',
      });
      expectPrinted(cell.meanDepth.toNumber('ft'), '4.50');
    },
  );

  published(
    { source: 'estimating-notes', section: 'excavation example', kind: 'printed' },
    'Construction estimating lecture notes: a box',
    () => {
      const box = layerVolume({ area: area(75.75, 'ft2').times('52.83'), thickness: '6.33 ft' });
      expectPrinted(box.toNumber('ft3'), '25331.85');
    },
  );

  published(
    { source: 'cost-course-notes', section: 'site cut and fill', kind: 'printed' },
    'Construction cost estimating course notes: site cut and fill',
    () => {
      const fill = layerVolume({ area: area(2000, 'ft2').times(625), thickness: '1.5 ft' });
      expectPrinted(fill.toNumber('ft3'), '1875000');
      expectPrinted((2_600_000 - fill.toNumber('ft3')) / 27, '26852');
    },
  );
});
