import { describe, expect, test } from 'vitest';
import {
  describeMove,
  describeWarning,
  planFromJSON,
  planJob,
  readJob,
  renderJobSheet,
  publishedFigures,
  renderWorking,
  type JobPlan,
  type SheetSystem,
  type WarningCode,
} from 'settline/job';
import { formatFor, formatLength, length, roundTo, type Length } from 'settline/units';
import { planFile } from '../plan-file.js';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import heronYard from '../../examples/heron-yard.json' with { type: 'json' };
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import slateWharf from '../../examples/slate-wharf.json' with { type: 'json' };
import { cornerName } from '../../src/job/tables/corner-name.js';
import { groupWarnings, subjectsText } from '../../src/job/sheet/words/group-warnings.js';
import { gradeLines } from '../../src/job/sheet/sections/grade-lines.js';
import { sheetText } from '../../src/job/sheet/layout/sheet-text.js';
import { unitsOfSheet } from '../../src/job/sheet/layout/units-of-sheet.js';
import { WARNING_WORDS } from '../../src/job/sheet/words/warning-words.js';
import { expectFault } from '../faults.js';
import { cellsOf, flat, linesUnder, marks, rowsUnder, section } from '../printed-table.js';

const EXAMPLES = { cedarCourt, heronYard, millGarth, slateWharf };
const SYSTEMS = ['us', 'metric'] as const;
const WIDE = 120;

const plans = new WeakMap<object, JobPlan>();
/** The plan of a job, made once. */
function planOf(job: object): JobPlan {
  const plan = plans.get(job) ?? planJob(readJob(job));
  plans.set(job, plan);
  return plan;
}
const sheetOf = (job: object, system: SheetSystem, width = WIDE): string =>
  renderJobSheet(planOf(job), { system, width });

/** Every example as planned and as printed, in both systems. */
const printed = Object.entries(EXAMPLES).flatMap(([name, job]) => {
  const plan = planOf(job);
  return SYSTEMS.map((system) => ({
    name,
    system,
    plan,
    sheet: renderJobSheet(plan, { system, width: WIDE }),
  }));
});

const exactMarks = (depth: Length, system: SheetSystem): number =>
  system === 'us' ? depth.toNumber('in') * 16 : depth.toNumber('mm');

/** A depth as the tape shows it. */
const onTape = (depth: Length, system: SheetSystem): string =>
  formatLength(depth, { as: system === 'us' ? 'in' : 'mm' }).replace(/ (?:in|mm)$/, '');

function part<T>(list: readonly T[], index: number): T {
  const found = list.at(index);
  if (found === undefined) expect.unreachable(`nothing at ${index}`);
  return found;
}

describe.each(printed)('$name in $system', ({ plan, sheet, system }) => {
  const stringSections = plan.stringLines.map((line) => ({
    line,
    text: section(sheet, `STRING ${line.id.toUpperCase()}, for`),
  }));

  test('each string has its own depths: layers and subgrade as planned', () => {
    for (const { line, text } of stringSections) {
      const { layers, subgrade, finish } = part(line.stakes, 0);
      const rows = rowsUnder(text, 'Depths below string', [...layers.map(({ name }) => name)]);
      expect(rows.map(([name, top, bottom]) => [name, top, bottom])).toEqual(
        layers.map(({ name, top, bottom }) => [name, onTape(top, system), onTape(bottom, system)]),
      );
      expect(rows[0]?.[1]).toBe(onTape(finish, system));
      const [last] = rowsUnder(text, 'Depths below string', ['SUBGRADE']);
      expect(last).toEqual(['SUBGRADE', onTape(subgrade, system)]);
    }
  });

  test('every lift is told as spread and compacted, below the string it is measured from', () => {
    for (const { line, text } of stringSections) {
      const pavement = plan.pavements.find(({ id }) => id === line.pavement);
      const lifts = pavement?.lifts ?? [];
      const rows = rowsUnder(
        text,
        'Lifts, from the subgrade up',
        lifts.map(({ lift }) => `${lift}`),
      );
      expect(rows).toHaveLength(lifts.length);
      lifts.forEach(({ loose, compacted, belowFinish }, k) => {
        const [, looseTop, compactedTop, spread, left] = rows[k] ?? [];
        const top = line.stringHeight.plus(belowFinish);
        expect(compactedTop).toBe(onTape(top, system));
        expect(looseTop).toBe(onTape(top.minus(loose).plus(compacted), system));
        // worked out from two rounded depths: no more than a mark off
        for (const [cell, exact] of [
          [spread, loose],
          [left, compacted],
        ] as const) {
          expect(Math.abs(marks(cell, system) - exactMarks(exact, system))).toBeLessThanOrEqual(1);
        }
      });
    }
  });

  test('stakes: the ground as measured, the dig from there, and no stake lost', () => {
    for (const { line, text } of stringSections) {
      const measured = line.stakes.filter(({ ground }) => ground !== null);
      if (measured.length === 0) {
        expect(rowsUnder(text, 'Stakes along the string', idsOf(line.stakes))).toHaveLength(
          line.stakes.length,
        );
        expect(flat(text)).toContain(`No ground was measured from string ${line.id}.`);
        continue;
      }
      const rows = rowsUnder(text, 'Depths at the stakes', idsOf(measured));
      expect(rows).toHaveLength(measured.length);
      measured.forEach(({ ground, dig, soil }, k) => {
        const [, , down, depth, ...strip] = rows[k] ?? [];
        if (ground === null || dig === null || soil === null) expect.unreachable('measured');
        expect(down).toBe(onTape(ground, system));
        expect(Math.abs(marks(depth, system) - exactMarks(dig, system))).toBeLessThanOrEqual(1);
        const left = marks(strip[1] ?? depth, system);
        expect(Math.abs(left - exactMarks(soil, system))).toBeLessThanOrEqual(1.5);
      });
      const missing = line.stakes.filter(({ ground }) => ground === null);
      for (const { id } of missing)
        expect(flat(text)).toMatch(
          new RegExp(`reading at .*${id} \\(at|${id} \\(at [^)]*\\): its ground was measured from`),
        );
    }
  });

  test('set-outs are rounded up to the step, never down', () => {
    const given = plan.job.setOutStep;
    const usual = length(system === 'us' ? '1/4 in' : '5 mm');
    const step = given === undefined ? usual : (given as Length);
    const as = system === 'us' ? 'in' : 'mm';
    const setOut = (out: Length) =>
      formatLength(roundTo(out, step, 'up'), { as, rounding: 'up' }).replace(` ${as}`, '');
    for (const { name, edges } of plan.pavements) {
      const text = section(sheet, name.toUpperCase());
      const rows = linesUnder(text, 'Dig line').map(cellsOf);
      if (given === undefined) {
        expect(flat(text)).toContain(`Rounded up to steps of ${formatFor(usual, system)}.`);
      }
      const isOne = edges.every((one) => one.base.equals(one.dig));
      const isSloped = edges.some((one) => !one.top.equals(one.dig));
      edges.forEach(({ edge, base, dig, top }) => {
        const row = rows.find(([first]) => first?.startsWith(`${edge} (`) === true);
        const outs = [...(isOne ? [] : [base]), dig, ...(isSloped ? [top] : [])];
        expect(row?.slice(2)).toEqual(outs.map(setOut));
      });
    }
  });

  test('no dash stands for a value, and no mass or volume prints as nothing', () => {
    const cells = sheet.split('\n').flatMap(cellsOf);
    expect(cells).not.toContain('-');
    expect(sheet).not.toMatch(/\b0\.0+ (?:t|kg|short tons|lb|m3|cu yd)\b/);
  });

  test('is in one system of units', () => {
    const body = sheet.split('BEFORE YOU DIG')[0] ?? '';
    const other =
      system === 'us' ? /\d (?:mm|m|m3|m2|t|kg)\b/ : /\d (?:in|ft|cu yd|sq ft|lb)\b|\d["']/;
    expect(body).not.toMatch(other);
    expect(sheet).not.toMatch(/\d %|\b(?:ft2|yd3)\b/);
  });

  test('every line fits the width, and the JSON of the plan prints the same', () => {
    for (const width of [40, 48, 64, 100]) {
      const narrow = renderJobSheet(plan, { system, width });
      for (const line of narrow.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
      expect(narrow.endsWith('\n')).toBe(true);
      expect(narrow).not.toMatch(/[^\S\n]\n/);
    }
    const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
    expect(renderJobSheet(again, { system, width: WIDE })).toBe(sheet);
  });

  test('rules of open digs are told, each once', () => {
    for (const { name, nearby } of plan.pavements) {
      if (nearby.gates === null) continue;
      expect(flat(section(sheet, name.toUpperCase()))).toContain('Excavation rules that apply');
      for (const { text } of nearby.gates.gates) {
        expect(flat(sheet).split(text[system])).toHaveLength(2);
      }
    }
  });

  test('closes with every caution and every source', () => {
    for (const { text } of plan.cautions) expect(flat(sheet)).toContain(text);
    const figures = publishedFigures(plan);
    expect(figures.length).toBeGreaterThan(3);
    for (const { name, title } of figures) {
      expect(flat(sheet)).toContain(name);
      expect(flat(sheet)).toContain(title);
    }
    expect(sheet).not.toContain('NIST');
    expect(sheet).toContain('BEFORE YOU DIG');
  });
});

const idsOf = (stakes: readonly { readonly id: string }[]) => stakes.map(({ id }) => id);

describe('the opening', () => {
  const opening = (job: object) => flat(sheetOf(job, 'us').split('CHECK BEFORE')[0] ?? '');

  test('says a height only where it holds for every string', () => {
    expect(opening(slateWharf)).toContain('Every string is 16 in above finished grade.');
    expect(opening(cedarCourt)).not.toContain('Every string');
    expect(opening(cedarCourt)).not.toMatch(/\d+ in above/);
    expect(opening(cedarCourt)).toContain('Each string has its own height');
  });

  test('pavements come in the order of the job, each with its strings behind it', () => {
    const sheet = sheetOf(cedarCourt, 'us');
    const places = ['PARKING COURT', 'STRING KERB', 'STRING FENCE', 'TERRACE', 'STRING GARDEN'].map(
      (title) => sheet.indexOf(`\n${title}`),
    );
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});

describe('directions say which way to face', () => {
  const facing = { from: 'S1', to: 'S4' };
  const move = { id: 'S3', distance: length('36 mm'), direction: 'right' } as const;

  test('describeMove', () => {
    expect(describeMove(move, { system: 'metric', facing })).toBe(
      'facing from S1 to S4, move S3 36 mm right',
    );
    expect(describeMove({ ...move, direction: 'left' }, { system: 'us', facing })).toBe(
      'facing from S1 to S4, move S3 1 7/16 in left',
    );
  });

  test.each([
    [{ system: 'us' }, 'REQUIRED'],
    [{ system: 'us', facing: { from: 'S1' } }, 'REQUIRED'],
    [{ system: 'us', facing: { from: 'S1', to: 4 } }, 'WRONG_TYPE'],
    [{ system: 'us', facing: { ...facing, too: 'S5' } }, 'UNKNOWN_FIELD'],
  ] as const)('describeMove refuses %j', (options, code) => {
    expectFault(() => describeMove(move, options as never), code);
  });

  test('the sheet faces from the first stake to the last, and back where the string is turned', () => {
    const text = (job: object) => flat(section(sheetOf(job, 'metric'), 'STRING LANE'));
    expect(text(millGarth)).toContain('> facing from L1 to L5, move L2 36 mm right');
    const turned = structuredClone(millGarth);
    part(turned.stringLines, 0).stakes.reverse();
    expect(text(turned)).toContain('> facing from L5 to L1, move L2 36 mm left');
  });

  test('the side of a stake and its move are opposite, seen from the same place', () => {
    const kerb = section(sheetOf(cedarCourt, 'us'), 'STRING KERB');
    expect(rowsUnder(kerb, 'Alignment', ['K2'])).toEqual([['K2', '1 1/8 right', 'OUT']]);
    expect(flat(kerb)).toContain('facing from K1 to K5, move K2 1 1/8 in left');
    const lane = section(sheetOf(millGarth, 'metric'), 'STRING LANE');
    expect(rowsUnder(lane, 'Alignment', ['L2', 'L3', 'L4'])).toEqual([
      ['L2', '36 left', 'OUT'],
      ['L4', '1 left', 'ok'],
    ]);
  });

  test('falls are told downhill', () => {
    const sheet = sheetOf(cedarCourt, 'us');
    const fall = (title: string) => linesUnder(section(sheet, title), 'Fall').join(' ');
    expect(fall('STRING GARDEN')).toContain('downhill: G2 to G1, G3 to G2');
    expect(fall('STRING FENCE')).toContain('downhill: F1 to F2, F2 to F3');
    expect(flat(fall('STRING GARDEN'))).toContain('on string, every span 1.7%');
  });

  test('a warning about a stake out of line is told with the facing of its string', () => {
    const first = flat(sheetOf(cedarCourt, 'us').split('PARKING COURT')[0] ?? '');
    expect(first).toContain('stand at the first stake of the string and face the last');
    expect(sheetOf(slateWharf, 'us')).not.toContain('face the last');
    expect(first).not.toContain('Facing from');
  });

  test('on its own it tells which way to face', () => {
    const of = (job: object) =>
      planFile(job).warnings.find(({ values }) => values['direction'] !== undefined);
    const [court, mill] = [of(cedarCourt), of(millGarth)];
    expect(court && describeWarning(court, { system: 'us' })).toBe(
      'Stake K2 is 1 1/8 in out of line. Facing from K1 to K5, move it 1 1/8 in left.',
    );
    expect(mill && describeWarning(mill, { system: 'metric' })).toContain(
      'Facing from L1 to L5, move it 36 mm right',
    );
  });
});

describe('edges and corners can be found on the ground', () => {
  test('letters go on after Z', () => {
    expect([0, 25, 26, 27, 51, 52, 701, 702].map(cornerName)).toEqual([
      'A',
      'Z',
      'AA',
      'AB',
      'AZ',
      'BA',
      'ZZ',
      'AAA',
    ]);
  });

  test('outer ring first, then holes, and an edge closes its own ring', () => {
    const job = structuredClone(slateWharf);
    const [apron] = job.pavements;
    const hole = [
      [4, 10],
      [4, 14],
      [8, 14],
    ];
    const withHole = {
      ...job,
      pavements: [
        {
          ...apron,
          border: undefined,
          outline: { ...apron?.outline, holes: [{ unit: 'ft', points: hole }] },
          edges: ['building', 'open', 'restraint', 'open', 'open', 'slab', 'open'],
        },
        ...job.pavements.slice(1),
      ],
    };
    const text = section(sheetOf(withHole, 'us'), 'WORKSHOP APRON');
    const names = linesUnder(text, 'Dig line').map((line) => cellsOf(line)[0]);
    expect(names.slice(1, 8)).toEqual([
      '1 (A-B) building',
      '2 (B-C) open',
      '3 (C-D) restraint',
      '4 (D-A) open',
      '5 (E-F) open',
      '6 (F-G) slab',
      '7 (G-E) open',
    ]);
    const [corner] = rowsUnder(text, 'Corners of the paving', ['F']);
    // by pencil: F at (4, 14) from A1 at (-2, 0): root of 36 + 196 is 15.2315 ft
    expect(corner).toEqual(['F', `4' 0"`, `14' 0"`, `15' 2 3/4"`, `26' 8 1/4"`]);
    expect(flat(text)).toContain('corners, as you face from A1 to A4 right');
  });

  test('an arc is told by the middle of its edge', () => {
    expect(flat(sheetOf(millGarth, 'metric'))).toContain(
      'Edge 3 (C-D) is an arc: its middle is 350 mm out of the paving',
    );
  });
});

describe('set-outs', () => {
  const digOf = (job: object, system: SheetSystem) =>
    linesUnder(section(sheetOf(job, system), 'PARKING COURT'), 'Dig line')
      .map(cellsOf)
      .find(([first]) => first?.startsWith('2 (') === true);

  test('stakes without a reading are named, and where the depth comes from instead', () => {
    expect(flat(sheetOf(slateWharf, 'us'))).toContain(
      'No ground reading at A4, B1, B2 and B3: the depth is taken from the spot levels.',
    );
    const stakes = cedarCourt.stakes.map((stake) =>
      stake.id === 'K3' ? { ...stake, ground: undefined } : stake,
    );
    expect(flat(sheetOf({ ...cedarCourt, stakes }, 'us'))).toContain(
      'No ground reading at K3: the depth is taken from the other stakes.',
    );
    expect(flat(sheetOf(cedarCourt, 'us'))).not.toContain('No ground reading');
  });

  test('the job gives the step of the crew', () => {
    expect(digOf(cedarCourt, 'metric')?.slice(2)).toEqual(['435', '510']); // 431.8 and 508
    expect(digOf({ ...cedarCourt, setOutStep: '1 in' }, 'us')?.slice(2)).toEqual(['17', '20']);
    expect(digOf({ ...cedarCourt, setOutStep: '25 mm' }, 'metric')?.slice(2)).toEqual([
      '450',
      '525',
    ]);
  });

  test('a step between the marks is told as it is, and still rounded up', () => {
    const job = { ...cedarCourt, setOutStep: '1/4 in' };
    expect(flat(sheetOf(job, 'metric'))).toContain('Rounded up to steps of 6.35 mm.');
    expect(digOf(job, 'metric')?.slice(2)).toEqual(['432', '508']); // 431.8, up
    const terrace = section(sheetOf(job, 'metric'), 'TERRACE');
    const [row] = rowsUnder(terrace, 'Dig line', ['1 (A-B) open']);
    expect(row?.slice(2)).toEqual(['216', '293']); // 215.9 and 292.1
  });

  test('soil and stone of the strips are said to be counted at full thickness', () => {
    const strips = 'strips beyond the paving are counted at full thickness, with no taper.';
    expect(flat(sheetOf(cedarCourt, 'us'))).toContain(strips);
    const tapered = {
      ...cedarCourt,
      pavements: cedarCourt.pavements.map((one) => ({ ...one, taperedBase: one.id === 'court' })),
    };
    const text = (title: string) => flat(section(sheetOf(tapered, 'us'), title));
    expect(text('PARKING COURT')).toContain('is counted as it tapers off');
    expect(text('PARKING COURT')).not.toContain(strips);
    expect(text('TERRACE')).toContain(strips);
    const walled = {
      ...cedarCourt,
      pavements: cedarCourt.pavements.map((one) => ({
        ...one,
        edges: one.edges.map(() => 'restraint'),
      })),
    };
    expect(flat(sheetOf(walled, 'us'))).not.toContain(strips);
  });

  test('a set-out that all edges share is said once', () => {
    const open = {
      ...cedarCourt,
      pavements: cedarCourt.pavements.map((one) => ({
        ...one,
        edges: one.edges.map(() => 'open'),
      })),
    };
    const text = section(sheetOf(open, 'us'), 'TERRACE');
    expect(flat(text)).toContain('base, every edge 8 1/2');
    expect(flat(text)).toContain('dig, every edge 11 1/2');
    expect(rowsUnder(text, 'Dig line', ['1 (A-B) open'])[0]).toEqual(['1 (A-B) open', `17' 0"`]);
  });
});

/** The site with a sag, settlement, sloped sides, rows between strings, low ground and a turn stake. */
function richJob() {
  const { stones, sands, ...materials } = slateWharf.materials;
  const [apron, path] = slateWharf.pavements;
  return {
    ...slateWharf,
    string: { tension: '20 lbf', weightPerLength: '0.02 lb/ft' },
    materials: {
      ...materials,
      stones,
      sands: sands.map((sand) => ({ ...sand, settlement: '1/4 in' })),
      jointSand: { ...materials.jointSand, bag: undefined },
    },
    pavements: [
      { ...apron, batter: 0.5, betweenStrings: { from: 'west', to: 'east', spacing: '5 ft' } },
      path,
    ],
    stakes: slateWharf.stakes.map((stake) =>
      stake.id === 'A4' ? { ...stake, ground: '14 in', groundFrom: 'end' } : stake,
    ),
    stringLines: [
      ...slateWharf.stringLines.map((line) =>
        line.id === 'east' ? { ...line, height: '20 in' } : line,
      ),
      { id: 'end', pavement: 'apron', stakes: ['A4', 'B3'] },
    ],
    existingLevels: {
      ...slateWharf.existingLevels,
      points: slateWharf.existingLevels.points.map(([x = 0, y = 0, z = 0]) => [
        x,
        y,
        y > 35 ? z - 2 : z,
      ]),
    },
  };
}

describe('what a job may carry besides', () => {
  const job = richJob();
  const plan = planOf(job);
  const sheet = renderJobSheet(plan, { system: 'us', width: WIDE });
  const apron = section(sheet, 'WORKSHOP APRON');
  const planned = part(plan.pavements, 0);

  test('screed rails and units are set high only where the settlement is known', () => {
    const west = flat(section(sheet, 'STRING WEST'));
    // 19 1/4 and 16 in below the string when finished
    expect(west).toContain('screed rails, 1/4 in high 19 ');
    expect(west).toContain('top of pavers laid, 1/4 in high 15 3/4');
    expect(sheet).not.toContain('no heights for screed rails');
    expect(sheetOf(slateWharf, 'us')).not.toMatch(/screed rails,|pavers laid/);
    expect(flat(sheetOf(slateWharf, 'us'))).toContain('no heights for screed rails');
  });

  test('sags of the string, span by span', () => {
    const west = part(plan.stringLines, 0);
    const rows = rowsUnder(
      section(sheet, 'STRING WEST'),
      'Sag of the string',
      west.sags.map(({ from, to }) => `${from} to ${to}`),
    );
    expect(rows.map(([, sag]) => sag)).toEqual(west.sags.map(({ sag }) => onTape(sag, 'us')));
    expect(sheetOf(slateWharf, 'us')).not.toContain('Sag');
    const light = { ...job, string: { tension: '20 lbf', weightPerLength: '0.0005 lb/ft' } };
    const hardly = flat(section(sheetOf(light, 'us'), 'STRING WEST'));
    expect(hardly).toContain('sag, every span under 1/16');
  });

  test('a pavement without a string has its depths below finished grade', () => {
    const lines = slateWharf.stringLines.filter(({ pavement }) => pavement === 'apron');
    const text = section(sheetOf({ ...slateWharf, stringLines: lines }, 'us'), 'OFFICE PATH');
    expect(rowsUnder(text, 'Depths below finished grade', ['base', 'SUBGRADE'])).toEqual([
      ['base', '4 1/4', '12 1/4', '8'],
      ['SUBGRADE', '12 1/4'],
    ]);
    expect(apron).not.toContain('Depths below finished grade');
  });

  test('a level that finished grade misses', () => {
    const { grade } = planned;
    if (grade === null) expect.unreachable('the apron is laid through levels');
    const [level, ...others] = grade.levels;
    if (level === undefined) expect.unreachable('it has four');
    // the miss is the level less finished grade
    const missed = { ...grade, levels: [{ ...level, miss: length('-1 in') }, ...others] };
    const style = { units: unitsOfSheet('us'), system: 'us', job: {} as never } as const;
    const rows = sheetText(gradeLines(missed, style), WIDE).split('\n').map(cellsOf);
    const ends = rows.filter(([name]) => name?.startsWith('slab') === true).map((row) => row[2]);
    expect(ends).toEqual(['1 in above it', 'meets it']);
  });

  test('sloped sides: the top of the dig, its area, and the soil behind', () => {
    const [head = '', ...rows] = linesUnder(apron, 'Dig line');
    expect(cellsOf(head)).toEqual(['edge', 'length', 'base, dig', 'top']);
    const top = planned.edges.map((edge) =>
      onTape(roundTo(edge.top, length('1/4 in'), 'up'), 'us'),
    );
    expect(rows.slice(0, 4).map((row) => cellsOf(row)[3])).toEqual(top);
    const area = planned.top?.area.toNumber('ft2').toFixed(1);
    expect(flat(apron)).toContain(`area of the dig at the top ${area} sq ft`);
    const sides = planned.earth.sides.toNumber('yd3').toFixed(2);
    expect(flat(apron)).toContain(`of this behind sloped sides ${sides} cu yd`);
    expect(flat(sheetOf(slateWharf, 'us'))).not.toMatch(/at the top|sloped sides [\d.]+ cu/);
  });

  test('fill is ordered, and told in the order', () => {
    const fill = part(planned.stones, -1);
    expect(fill.layer).toBe('fill');
    const volume = fill.order.compacted.volume.toNumber('yd3').toFixed(2);
    expect(rowsUnder(apron, 'Quantities', ['fill'])[0]?.[1]).toBe(volume);
    const orders = flat(section(sheet, 'ORDER AND HAUL AWAY'));
    expect(orders).toContain(`of this fill, up to subgrade ${volume} cu yd`);
    expect(sheetOf(slateWharf, 'us')).not.toContain('of this fill');
  });

  test('rows between two strings of unequal height', () => {
    const between = section(sheet, 'BETWEEN STRINGS WEST AND EAST');
    const rows = linesUnder(between, 'Depths below a line').map(cellsOf);
    const plans = planned.betweenStrings?.rows ?? [];
    expect(plans.length).toBeGreaterThan(2);
    for (const { distance, toFinish, toSubgrade } of plans) {
      const at = formatLength(distance, { as: 'ft-in', nearest: '1/8 in' });
      const row = rows.find(([first]) => first === at);
      expect(row?.[1]).toBe(onTape(toFinish, 'us'));
      expect(marks(row?.[2], 'us') - marks(row?.[1], 'us')).toBe(15.25 * 16);
      const off = marks(row?.[2], 'us') - exactMarks(toSubgrade, 'us');
      expect(Math.abs(off)).toBeLessThanOrEqual(1);
    }
    expect(sheetOf(slateWharf, 'us')).not.toContain('BETWEEN STRINGS');
  });

  test('old paving is told piece by piece', () => {
    const pieces = {
      ...job,
      oldPaving: [
        { material: 'asphalt', thickness: '3 in', pavement: 'apron', share: 0.5 },
        { material: 'concrete', thickness: '4 in', pavement: 'apron', share: 0.25 },
      ],
    };
    const text = flat(section(sheetOf(pieces, 'us'), 'WORKSHOP APRON'));
    const laid = part(planOf(pieces).pavements, 0).oldPaving;
    expect(laid).toHaveLength(2);
    for (const { material, thickness, area } of laid) {
      const over = area.toNumber('ft2').toFixed(1);
      expect(text).toContain(`strip old ${material}, ${over} sq ft ${onTape(thickness, 'us')}`);
    }
  });

  test('a stake whose ground is measured from another string is told so', () => {
    expect(flat(section(sheet, 'STRING WEST'))).toContain(
      'its ground was measured from string end',
    );
    expect(flat(section(sheet, 'STRING END'))).toContain('No ground reading at B3 (at');
  });

  test('an edge on which nothing is said is told so', () => {
    const bare = { ...job, pavements: job.pavements.map((one) => ({ ...one, edges: undefined })) };
    expect(flat(sheetOf(bare, 'us'))).toContain('not said: planned as open.');
    expect(sheet).not.toContain('not said');
  });

  test('masses stand in the unit that shows them', () => {
    const sand = part(plan.pavements, 1).supplies.jointSand;
    const line = linesUnder(section(sheet, 'ORDER AND HAUL AWAY'), 'Order list')
      .map(cellsOf)
      .find(([first]) => first?.startsWith('joint sand') === true);
    expect(line?.[0]).toBe('joint sand, with 10% waste');
    expect(line?.[1]).toMatch(/^\d+\.\d lb$/);
    const metric = renderJobSheet(plan, { system: 'metric', width: WIDE });
    expect(flat(metric)).toMatch(/joint sand, with 10% waste \d+\.\d kg/);
    expect(sand).not.toBeNull();
    const bedding = part(plan.pavements, 1).bedding.order.deliveredMass;
    const row = rowsUnder(section(sheet, 'OFFICE PATH'), 'Quantities', ['bedding'])[0];
    expect(row?.at(-1)).toBe(`${bedding.toNumber('lb').toFixed(1)} lb`);
  });
});

describe('quantities', () => {
  const plan = planOf(cedarCourt);
  const sheet = renderJobSheet(plan, { system: 'us', width: WIDE });

  test('of a pavement, read back', () => {
    const court = part(plan.pavements, 0);
    const text = section(sheet, 'PARKING COURT');
    for (const { layer, order } of [...court.stones, court.bedding]) {
      expect(rowsUnder(text, 'Quantities', [layer])[0]).toEqual([
        layer,
        order.compacted.volume.toNumber('yd3').toFixed(2),
        order.loose.volume.toNumber('yd3').toFixed(2),
        `${order.deliveredMass.toNumber('ton-us').toFixed(1)} short tons`,
      ]);
    }
    expect(rowsUnder(text, 'Quantities', ['soil'])[0]?.[1]).toBe(
      court.spoil.bank.volume.toNumber('yd3').toFixed(2),
    );
    expect(rowsUnder(text, 'Quantities', ['pavers, net'])[0]?.[1]).toBe(`${court.pavers?.whole}`);
  });

  test('waste stands beside what includes it', () => {
    const text = flat(section(sheet, 'PARKING COURT'));
    expect(text).toContain(
      'base and sub-base: loose and weight include 4% waste; weight includes 3% water.',
    );
    expect(text).toContain('bedding: loose and weight include 8% waste; weight includes 4% water.');
    // 5520 pavers are 5519.4; 5741 to order less those
    expect(text).toContain(
      'pavers, net 5520 plus 4% for cuts and breakage 221 pavers to order 5741',
    );
    const orders = flat(section(sheet, 'ORDER AND HAUL AWAY'));
    const [stone] = plan.totals.stones;
    expect(orders).toContain(
      `loose, with 4% waste ${stone?.loose.volume.toNumber('yd3').toFixed(2)} cu yd`,
    );
    expect(orders).toContain('weight, with 4% waste and 3% water');
    expect(orders).toContain('concrete pavers to order, with 4% for cuts and breakage');
    const list = linesUnder(sheetOf(slateWharf, 'us'), 'Order list').map(
      (line) => cellsOf(line)[0],
    );
    expect(list.slice(0, 6)).toEqual([
      'stone, with 5% waste',
      'left over',
      'sand, with 5% waste',
      'left over',
      'paver to order, with 2% for breakage',
      'left over',
    ]);
    expect(orders).not.toMatch(/compacted, in place, with/);
  });

  test.each([
    // half of 271 cut pavers, rounded up; (1380 + 136 + 264) x 1.02 is 1815.6
    [slateWharf, 'WORKSHOP APRON', [1380, 271, 136, 264, 36, 1816]],
    [slateWharf, 'OFFICE PATH', [328, 155, 78, 8, 414]],
    // the border has a paver of its own: 308 x 1.02 is 314.2
    [heronYard, 'DRIVE', [3088, 311, 156, 64, 3308, 308, 7, 315]],
    [heronYard, 'WALK TO THE DOOR', [255, 13, 268]],
  ])('pavers add up to the order: %#', (site, heading, counts) => {
    const text = section(sheetOf(site, 'us'), heading);
    const rows = text.split('\n').filter((line) => /pavers|of these cut|^ +plus|units/.test(line));
    expect(rows.map((line) => Number(/(\d+)$/.exec(line)?.[1]))).toEqual(counts);
    let sum = 0;
    for (const [index, line] of rows.entries()) {
      const count = counts[index] ?? 0;
      if (line.includes('to order')) expect(count, line).toBe(sum);
      else if (line.includes(', net')) sum = count;
      else if (line.includes('plus')) sum += count;
    }
  });

  test('what cuts lose is less where off-cuts are used again', () => {
    const job = structuredClone(slateWharf);
    Object.assign(job.materials.pavers[0] ?? {}, { reuse: 0.4 });
    const text = flat(section(sheetOf(job, 'us'), 'WORKSHOP APRON'));
    // 271 x 0.6 / 2 is 81.3
    expect(text).toMatch(
      /of these cut 271 plus lost to cuts 82 plus for the border 264 plus 2% for breakage/,
    );
  });

  test('loads, orders and soil to haul away', () => {
    const orders = section(sheet, 'ORDER AND HAUL AWAY');
    const [stone] = plan.totals.stones;
    expect(rowsUnder(orders, 'Crushed stone', ['order, rounded up'])[0]?.[1]).toBe(
      `${Math.ceil(stone?.loose.volume.toNumber('yd3') ?? 0)} cu yd`,
    );
    expect(flat(orders)).toContain(
      `truck loads (limited by weight) ${plan.totals.spoil?.loads.count}`,
    );
    expect(rowsUnder(orders, 'Soil to haul away', ['in place (bank)'])[0]?.[1]).toBe(
      `${plan.totals.spoil?.bank.volume.toNumber('yd3').toFixed(2)} cu yd`,
    );
    expect(flat(sheet)).not.toMatch(/cart|in the bank/i);
  });
});

describe('warnings', () => {
  const warning = (subject: string, values = {}, code: WarningCode = 'STAKE_IN_DIG') => ({
    code,
    subject,
    values,
  });

  test('of one code and equal values are one group', () => {
    const cover = { cover: length('2 in') };
    const groups = groupWarnings([
      warning('stake A', { pavement: 'Drive', ...cover }),
      warning('stake B', { ...{ cover: length('50.8 mm') }, pavement: 'Drive' }),
      warning('stake C', { pavement: 'Walk', ...cover }),
      warning('stake B', { pavement: 'Drive', ...cover }),
      warning('stake D', { pavement: 'Drive', ...cover }, 'FILL_NEEDED'),
      warning('stake A', { pavement: 'Drive', ...cover }),
    ]);
    expect(
      groups.map(({ warning: { subject, code }, others }) => [code, subject, ...others]),
    ).toEqual([
      ['STAKE_IN_DIG', 'stake A', 'stake B'],
      ['STAKE_IN_DIG', 'stake C'],
      ['FILL_NEEDED', 'stake D'],
    ]);
  });

  test('name what they hold for in a row', () => {
    expect(subjectsText(['stake B2'])).toBe('stake B2');
    expect(subjectsText(['stake B2', 'stake B3', 'stake B4'])).toBe('stakes B2, B3 and B4');
    expect(subjectsText(['Drive', 'stake B3'])).toBe('Drive and stake B3');
  });

  test('print in one line where they hold at several stakes, and stay single in the plan', () => {
    const job = {
      ...cedarCourt,
      stakes: cedarCourt.stakes.map((stake) =>
        stake.id.startsWith('G') ? { ...stake, x: '17 ft 3 in' } : stake,
      ),
    };
    const inDig = planOf(job).warnings.filter(({ code }) => code === 'STAKE_IN_DIG');
    expect(inDig).toHaveLength(3);
    const first = sheetOf(job, 'us').split('PARKING COURT')[0] ?? '';
    expect(flat(first)).toContain('The same holds for stakes G2 and G3.');
    expect(first.match(/^! Stake G/gm)).toHaveLength(1);
  });

  test('name an edge as the sheet does', () => {
    const [apron, ...others] = slateWharf.pavements;
    const levels = apron?.grade.levels.map(({ name, x, y }) => ({
      name,
      x,
      y,
      elevation: name.startsWith('slab') ? '99 ft' : '99.8 ft',
    }));
    const job = {
      ...slateWharf,
      pavements: [{ ...apron, grade: { ...apron?.grade, levels } }, ...others],
    };
    const wet = planOf(job).warnings.filter(({ code }) => code === 'FALLS_TO_BUILDING');
    expect(wet.map(({ subject, values }) => [subject, values['edge']])).toEqual([
      ['Workshop apron', 1],
    ]);
    const first = flat(sheetOf(job, 'us').split('LEVELS')[0] ?? '');
    expect(first).toContain('edge 1 (A-B)');
    // of two pavements of one name there is no telling which is meant
    const twins = job.pavements.map((one) => ({ ...one, name: 'Workshop apron' }));
    expect(flat(sheetOf({ ...job, pavements: twins }, 'us'))).not.toContain('edge 1 (A-B)');
  });

  test('a plan without warnings says so', () => {
    const quiet = planOf({
      ...cedarCourt,
      pavements: cedarCourt.pavements.slice(1),
      oldPaving: undefined,
      stakes: cedarCourt.stakes.filter(({ id }) => id.startsWith('G')),
      stringLines: cedarCourt.stringLines.slice(2),
    });
    expect(quiet.warnings).toEqual([]);
    expect(renderJobSheet(quiet, { system: 'us' })).toContain('No warnings.');
  });

  test.each(Object.keys(WARNING_WORDS) as WarningCode[])('%s has words in both systems', (code) => {
    const names = new Set<string>();
    const say = (name: string) => {
      names.add(name);
      return '';
    };
    WARNING_WORDS[code]({ subject: '', say, reach: undefined, rule: '' });
    const values = Object.fromEntries([...names].map((name) => [name, length('2 ft')]));
    const [us, metric] = SYSTEMS.map((system) =>
      describeWarning({ code, subject: 'stake S1', values }, { system }),
    );
    expect(us).toMatch(/^Stake S1/);
    expect(`${us}${metric}`).not.toMatch(/undefined|\[object/);
    if (names.size > 0) expect(us).not.toBe(metric);
    for (const name of names) {
      // each figure stands in the words
      const without = describeWarning(
        { code, subject: 'stake S1', values: { ...values, [name]: '' } },
        { system: 'us' },
      );
      expect(without).not.toBe(us);
    }
  });
});

test.each([
  [{ system: 'imperial' }, 'UNKNOWN_CHOICE'],
  [{ system: 'us', width: 20 }, 'OUT_OF_RANGE'],
  [{ system: 'us', width: 50.5 }, 'NOT_WHOLE'],
] as const)('refuses %j', (options, code) => {
  expectFault(() => renderJobSheet(planOf(cedarCourt), options as never), code);
});

describe('the working', () => {
  const plan = planOf(cedarCourt);

  test('prints in the marks of the sheet, with the source of each step', () => {
    const text = renderWorking(plan.working, { system: 'us' });
    expect(text).toContain('Parking court: Depth of the subgrade below finished grade');
    expect(text).toContain('D = 18 3/4 in (total build-up)');
    expect(text).toContain('[Geometry and arithmetic; worked out here]');
    expect(text).toContain(' sq ft');
    expect(text).not.toMatch(/\d ft2|\d yd3 |\d %/);
    for (const line of renderWorking(plan.working, { system: 'us', width: 60 }).split('\n')) {
      expect(line.length).toBeLessThanOrEqual(72);
    }
  });

  test('names the value before rounding where rounding shows, and nowhere else', () => {
    const given = (value: Length) => [
      {
        kind: 'formula' as const,
        title: 'T',
        formula: 'D = t',
        given: [],
        result: { symbol: 'D', name: 'depth', value, text: String(value), source: null },
        source: 'derived' as const,
      },
    ];
    const text = (value: Length, system: SheetSystem) => renderWorking(given(value), { system });
    expect(text(length('18 3/4 in'), 'metric')).toContain(
      'D = 476 mm, unrounded 476.25 mm (depth)',
    );
    expect(text(length('18 3/4 in'), 'us')).toContain('D = 18 3/4 in (depth)');
    expect(text(length('1/3 in'), 'us')).toContain('D = 0.333 in, unrounded 0.33333333... in');
    expect(text(length('100 1/3 ft'), 'us')).toContain(`D = 100' 4" (depth)`);
    expect(text(length('100.01 ft'), 'us')).toContain(`D = 100' 0 1/8", unrounded 1200.12 in`);
    expect(text(length('476 mm'), 'metric')).toContain('D = 476 mm (depth)');
    // a coordinate has more digits before the point than others have in all
    expect(text(length('612352.82471 m'), 'metric')).toContain(
      'D = 612352.825 m, unrounded 612352.8247... m',
    );
  });
});
