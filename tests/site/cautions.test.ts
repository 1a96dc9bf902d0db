// What can hurt someone carries cautions, and nothing says that it cannot.
import { describe, expect, test } from 'vitest';
import * as haul from 'settline/haul';
import * as site from 'settline/site';
import { stateVolume } from 'settline/volumes';

const crossing = {
  digWidth: '12 ft',
  depth: '1 ft',
  crossingAngle: '90 deg',
  lines: [{ id: 'gas', width: '2 in', tolerance: '18 in' }],
} as const;
const rule = {
  workingDays: 2,
  requestDayCounts: false,
  start: 'working-day-after',
  weekend: ['Sunday'],
  holidays: [],
  validity: { days: 14, count: 'calendar', from: 'request' },
} as const;

/** Each result, and what its cautions must be about. */
const RESULTS = {
  oldPaving: [
    site.oldPaving({ layers: [{ material: 'asphalt', area: '9 m2', thickness: '2 in' }] }),
    ['dust', 'utilities', 'loads'],
  ],
  spoilLoads: [
    haul.spoilLoads({
      bank: stateVolume('9 m3', 'bank'),
      loosePerBank: 1.3,
      bankMoistDensity: '2 t/m3',
      boxVolume: '9 m3',
      payload: '9 t',
    }),
    ['loads', 'excavation'],
  ],
  spoilPile: [
    haul.spoilPile({ volume: stateVolume('9 m3', 'loose'), reposeAngle: '30 deg', setBack: '1 m' }),
    ['excavation', 'trees', 'utilities'],
  ],
  axleGroupLimit: [haul.axleGroupLimit({ axles: 2, spread: '4 ft' }), ['loads']],
  checkAxleGroups: [
    haul.checkAxleGroups({
      axles: [
        { id: 'a', position: '0 m', load: '1 t' },
        { id: 'b', position: '2 m', load: '1 t' },
      ],
      caps: 'us-interstate',
    }),
    ['loads'],
  ],
  machineTime: [
    haul.machineTime({
      bank: stateVolume('9 m3', 'bank'),
      loosePerBank: 1.3,
      bucket: '0.2 m3',
      fillFactor: 1,
      cycle: '20 s',
      efficiency: 0.8,
    }),
    ['utilities', 'excavation'],
  ],
  haulBalance: [
    haul.haulBalance({
      loadTime: '5 min',
      haulTime: '5 min',
      dumpTime: '5 min',
      returnTime: '5 min',
      truckLoad: '9 m3',
    }),
    ['loads'],
  ],
  handDig: [site.handDig(crossing), ['utilities', 'excavation']],
  'handDig, drawn': [
    site.handDig({
      outline: {
        unit: 'm',
        points: [
          [0, 0],
          [9, 0],
          [9, 9],
        ],
      },
      depth: '1 m',
      lines: [
        {
          id: 'gas',
          path: [
            { x: '0 m', y: '0 m' },
            { x: '9 m', y: '1 m' },
          ],
          width: '0 m',
          tolerance: '2 ft',
        },
      ],
    }),
    ['utilities', 'excavation'],
  ],
  utilityCover: [
    site.utilityCover({ found: '1 m', dig: '0.3 m', minimumCover: '0.1 m' }),
    ['utilities', 'excavation'],
  ],
  locateWindow: [
    site.locateWindow({ request: '2030-05-22', rule, today: '2030-05-28' }),
    ['utilities'],
  ],
  rootZone: [
    site.rootZone({
      trunkDiameter: '1 ft',
      rule: { radiusPerDiameter: 12 },
      dig: { near: '99 ft' },
    }),
    ['trees', 'excavation'],
  ],
  excavationGates: [
    site.excavationGates({
      depth: '1 ft',
      soil: 'stable-rock',
      spoilDistance: '9 ft',
      footing: { distance: '9 m', bottom: '3 m' },
    }),
    ['excavation', 'utilities', 'structure'],
  ],
  waterInDig: [site.waterInDig({ area: '9 m2', rain: '1 in' }), ['excavation', 'drainage']],
  closableArea: [
    site.closableArea({
      stone: '9 t',
      moisture: 0,
      thickness: '0.2 m',
      compactedDryDensity: '2 t/m3',
    }),
    ['excavation', 'drainage'],
  ],
  softSpot: [
    site.softSpot({
      area: '9 m2',
      depth: '1 ft',
      compactedPerLoose: 0.8,
      compactedDryDensity: '2 t/m3',
      moisture: 0,
    }),
    ['excavation', 'structure', 'utilities'],
  ],
  baseTaper: [
    site.baseTaper({ first: '8 in', second: '4 in', slope: '1:4', width: '4 ft' }),
    ['structure'],
  ],
  wheelStressScreen: [
    haul.wheelStressScreen({
      wheelLoad: '1 kN',
      tyrePressure: '100 kPa',
      depth: '1 m',
      shearStrength: '1 MPa',
      geotextile: true,
    }),
    ['structure'],
  ],
} as const;

const drawnRootZone = site.rootZone({
  trunkDiameter: '1 ft',
  rule: { radiusPerDiameter: 12 },
  dig: {
    outline: {
      unit: 'm',
      points: [
        [0, 0],
        [9, 0],
        [9, 9],
      ],
    },
    trunk: { x: '9 m', y: '-1 m' },
  },
});

describe.each([
  ...Object.entries(RESULTS),
  ['drawn', [drawnRootZone, ['trees', 'excavation']]] as const,
])('%s', (_, [result, ids]) => {
  test('carries its cautions', () => {
    expect(result.cautions.map(({ id }) => id)).toEqual(ids);
    expect(result.cautions.every(({ text }) => text.length > 40)).toBe(true);
  });

  test('never says safe, and is frozen through and through', () => {
    const text = `${JSON.stringify(result)} ${JSON.stringify(result.working)}`;
    expect(text).not.toMatch(/\bsafe|\bharmless|\bno danger|\bok\b/i);
    expect(text).not.toMatch(/NaN|Infinity/);
    expect(Object.isFrozen(result)).toBe(true);
    expect(Object.isFrozen(result.cautions)).toBe(true);
    expect(result.working.length).toBeGreaterThan(0);
  });
});

test('no function of the two folders is left out but the two that touch nobody', () => {
  const functions = [...Object.keys(site), ...Object.keys(haul)];
  expect(functions.filter((name) => !(name in RESULTS)).sort()).toEqual([
    'cuttingEdge',
    'plateTime',
  ]);
});
