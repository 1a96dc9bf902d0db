import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import {
  baseTaper,
  closableArea,
  excavationGates,
  handDig,
  locateWindow,
  oldPaving,
  rootZone,
  softSpot,
  utilityCover,
  waterInDig,
} from 'settline/site';
import { faultsOf } from '../faults.js';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';
import { without } from '../without.js';

const at = (x: string, y: string) => ({ x, y });
const OUTLINE = { unit: 'm', points: [[0, 0] as const, [9, 0] as const, [9, 9] as const] };
const LINE = { id: 'gas', width: '2 in', tolerance: '18 in' };

const CASES: Readonly<Record<string, MisspeltCase>> = {
  oldPaving: [
    oldPaving,
    {
      layers: [
        {
          material: 'brick',
          area: '9 m2',
          thickness: '60 mm',
          inPlaceDensity: '2 t/m3',
          looseDensity: '1 t/m3',
        },
      ],
      sawCuts: { runs: ['9 ft'], grid: { along: '4 m', across: '4 m', maximumPiece: '1 m' } },
    },
    [
      ['layer', 'layers'],
      ['sawcuts', 'sawCuts'],
      ['layers[0].materal', 'material'],
      ['layers[0].inplaceDensity', 'inPlaceDensity'],
      ['sawCuts.run', 'runs'],
      ['sawCuts.grid.acros', 'across'],
    ],
  ],
  'handDig, straight': [
    handDig,
    {
      digWidth: '12 ft',
      crossingAngle: '90 deg',
      depth: '1 ft',
      lines: [
        { ...LINE, offset: '10 ft' },
        { ...LINE, id: 'water', offset: '12 ft' },
      ],
      rate: '0.35 m3/h',
    },
    [
      ['digWidht', 'digWidth'],
      ['crossingangle', 'crossingAngle'],
      ['line', 'lines'],
      ['lines[1].ofset', 'offset'],
      ['lines[0].widht', 'width'],
      ['rates', 'rate'],
    ],
  ],
  'handDig, drawn': [
    handDig,
    {
      outline: OUTLINE,
      depth: '1 ft',
      lines: [{ ...LINE, path: [at('0 m', '0 m'), at('9 m', '1 m')] }],
    },
    [
      ['outlin', 'outline'],
      ['deph', 'depth'],
      ['lines[0].paths', 'path'],
      ['lines[0].tolerence', 'tolerance'],
      ['lines[0].path[1].X', 'x'],
    ],
  ],
  utilityCover: [
    utilityCover,
    { found: '0.52 m', dig: '0.435 m', minimumCover: '0.15 m', uncertainty: '10 mm' },
    [
      ['fund', 'found'],
      ['minimumcover', 'minimumCover'],
      ['uncertianty', 'uncertainty'],
    ],
  ],
  locateWindow: [
    locateWindow,
    {
      request: '2030-05-22',
      rule: {
        workingDays: 2,
        requestDayCounts: false,
        start: 'working-day-after',
        weekend: ['Saturday'],
        holidays: ['2030-05-24'],
        validity: { days: 14, count: 'calendar', from: 'request' },
      },
      today: '2030-05-23',
    },
    [
      ['requst', 'request'],
      ['todays', 'today'],
      ['rule.workingdays', 'workingDays'],
      ['rule.weekends', 'weekend'],
      ['rule.holiday', 'holidays'],
      ['rule.validity.day', 'days'],
    ],
  ],
  'rootZone, straight': [
    rootZone,
    {
      trunkDiameter: '16 in',
      rule: { radiusPerDiameter: 12, minimumRadius: '6 ft' },
      dig: { near: '10 ft', far: '20 ft' },
    },
    [
      ['trunkdiameter', 'trunkDiameter'],
      ['rule.radiusPerDiamter', 'radiusPerDiameter'],
      ['rule.minimumradius', 'minimumRadius'],
      ['dig.naer', 'near'],
      ['dig.fra', 'far'],
    ],
  ],
  'rootZone, drawn': [
    rootZone,
    {
      trunkDiameter: '16 in',
      rule: { radiusPerDiameter: 12 },
      dig: { outline: OUTLINE, trunk: at('9 m', '-1 m') },
    },
    [
      ['dig.outlin', 'outline'],
      ['dig.trunks', 'trunk'],
      ['dig.trunk.Y', 'y'],
    ],
  ],
  excavationGates: [
    excavationGates,
    {
      depth: '1.3 m',
      soil: 'C',
      spoilDistance: '1 m',
      openTime: '8 h',
      footing: { distance: '1 m', bottom: '1 m' },
    },
    [
      ['soli', 'soil'],
      ['spoildistance', 'spoilDistance'],
      ['footing.botom', 'bottom'],
    ],
  ],
  waterInDig: [
    waterInDig,
    {
      area: '72.4 m2',
      rain: '18 mm',
      drainsIn: [{ area: '9 m2', coefficient: 0.9 }],
      pump: '120 l/min',
    },
    [
      ['rian', 'rain'],
      ['drainsin', 'drainsIn'],
      ['drainsIn[0].coeficient', 'coefficient'],
      ['pumps', 'pump'],
    ],
  ],
  closableArea: [
    closableArea,
    {
      stone: '14 t',
      moisture: 0,
      thickness: '0.2 m',
      compactedDryDensity: '2.15 t/m3',
      crew: { area: '12 m2', time: '1 h', timeLeft: '3 h' },
    },
    [
      ['moistur', 'moisture'],
      ['crews', 'crew'],
      ['crew.timeleft', 'timeLeft'],
    ],
  ],
  softSpot: [
    softSpot,
    {
      area: '3.2 m2',
      depth: '0.25 m',
      compactedPerLoose: 0.8,
      compactedDryDensity: '2.2 t/m3',
      moisture: 0,
      perimeter: '8 m',
      lap: '0.2 m',
    },
    [
      ['perimter', 'perimeter'],
      ['lpa', 'lap'],
      ['compactedPerLose', 'compactedPerLoose'],
    ],
  ],
  baseTaper: [
    baseTaper,
    { first: '0.2 m', second: '0.1 m', slope: '1:4', width: '1.5 m', spacing: '0.1 m' },
    [
      ['frist', 'first'],
      ['slop', 'slope'],
      ['spaceing', 'spacing'],
    ],
  ],
};

describe('a misspelt field is refused with the name that was meant', () => {
  testMisspelt(CASES);
});

/** A tree whose dig is drawn, unless the dig is something else altogether. */
function withOutline(options: unknown): unknown {
  const tree = options as { readonly dig?: unknown } | null | undefined;
  const dig = tree?.dig;
  const isPlain = typeof dig === 'object' && dig !== null && !Array.isArray(dig);
  return isPlain ? { ...(options as object), dig: { outline: OUTLINE, ...dig } } : options;
}

describe('answers or refuses, whatever it gets', () => {
  const drawn = CASES['handDig, drawn'];
  const rest = without(CASES, 'handDig, drawn', 'rootZone, drawn');
  // outlines are spoilt where they are read
  testGarbage({
    ...rest,
    'handDig, drawn': [handDig, drawn?.[1] ?? {}, ['outline']],
    'rootZone, drawn': [
      (options: unknown) => rootZone(withOutline(options) as never),
      {
        trunkDiameter: '16 in',
        rule: { radiusPerDiameter: 12 },
        dig: { trunk: at('9 m', '-1 m') },
      },
    ],
  });
});

describe('one fault for each bad field, all at once', () => {
  const faults = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${code} ${pathText(path)}`);

  test('a straight dig', () => {
    const run = () =>
      handDig({ digWidth: 12, depth: '0 m', lines: [{ ...LINE, width: '-1 in' }] } as never);
    expect(faults(run)).toEqual([
      'UNIT_MISSING digWidth',
      'NOT_POSITIVE depth',
      'NEGATIVE lines[0].width',
      'REQUIRED crossingAngle',
    ]);
  });

  test('a drawn dig, and lines that do not fit it', () => {
    const lines = [
      { ...LINE, offset: '1 m' },
      { ...LINE, path: [at('0 m', '0 m'), at('0 m', '0 m')] },
    ];
    expect(faults(() => handDig({ outline: OUTLINE, depth: '1 ft', lines } as never))).toEqual([
      'DUPLICATE_ID lines[1].id',
      'REQUIRED lines[0].path',
      'CONFLICTING_FIELDS lines[0].offset',
    ]);
  });

  test('neither form, and both', () => {
    const rest = { depth: '1 ft', lines: [LINE] };
    expect(faults(() => handDig(rest as never))).toEqual(['REQUIRED digWidth']);
    expect(faults(() => handDig({ ...rest, digWidth: '1 m', outline: OUTLINE } as never))).toEqual([
      'CONFLICTING_FIELDS digWidth',
    ]);
  });

  test('a tree and old paving', () => {
    const tree = { trunkDiameter: '16 in', rule: { radiusPerDiameter: '1.2x' }, dig: {} };
    expect(faults(() => rootZone(tree as never))).toEqual([
      'NOT_A_NUMBER rule.radiusPerDiameter',
      'REQUIRED dig.near',
    ]);
    const brick = { material: 'brick', area: 9, thickness: '60 mm' };
    expect(faults(() => oldPaving({ layers: [brick] } as never))).toEqual([
      'UNIT_MISSING layers[0].area',
      'REQUIRED layers[0].inPlaceDensity',
      'REQUIRED layers[0].looseDensity',
    ]);
  });
});
