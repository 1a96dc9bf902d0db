import { describe, expect, test } from 'vitest';
import { baseTaper, closableArea, excavationGates, softSpot, waterInDig } from 'settline/site';
import { formatLength, length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { without } from '../without.js';

describe('excavation gates', () => {
  const ids = (depth: string, more: object = {}) =>
    excavationGates({ depth, soil: 'C', spoilDistance: '2 ft', ...more }).gates.map(({ id }) => id);

  test('each gate just before and just at its depth', () => {
    expect(ids('3.999 ft')).toEqual(['competent-person', 'no-system']);
    expect(ids('4 ft')).toEqual(['competent-person', 'egress', 'no-system']);
    expect(ids('4.001 ft')).toEqual(['competent-person', 'egress', 'atmosphere', 'no-system']);
    expect(ids('5 ft')).toEqual(['competent-person', 'egress', 'atmosphere', 'protective-system']);
    expect(ids('5.999 ft')).not.toContain('walkway');
    expect(ids('6 ft')).toContain('walkway');
    expect(ids('20 ft')).not.toContain('engineer');
    expect(ids('20.001 ft')).toContain('engineer');
  });

  test('stable rock needs no protective system under 5 ft, and says so by silence only', () => {
    expect(ids('3 ft', { soil: 'stable-rock' })).toEqual(['competent-person']);
  });

  test('spoil nearer than 2 ft, or nobody knows where', () => {
    expect(ids('1 ft', { spoilDistance: '1.999 ft' })).toContain('spoil-set-back');
    expect(ids('1 ft', { spoilDistance: undefined })).toContain('spoil-set-back');
    expect(ids('1 ft')).not.toContain('spoil-set-back');
  });

  test('rules with a figure are told in both systems, with the figure of the rule', () => {
    const { gates } = excavationGates({ depth: '4 ft', soil: 'C' });
    const figures = { egress: '25 ft', 'no-system': '5 ft', 'spoil-set-back': '2 ft' };
    for (const [id, figure] of Object.entries(figures)) {
      const text = gates.find((gate) => gate.id === id)?.text;
      const metres = formatLength(length(figure), { as: 'm', nearest: '0.01 m' });
      expect(text?.us).toContain(`${figure} `);
      expect(text?.metric).toBe(text?.us.replace(figure, metres));
    }
    const rule = gates.find(({ id }) => id === 'competent-person');
    expect(rule?.text.metric).toBe(rule?.text.us);
  });

  test('slopes by soil; ground that nobody classified is sloped as C', () => {
    const offset = (soil: 'stable-rock' | 'A' | 'B' | 'C' | 'not-classified') =>
      excavationGates({ depth: '10 ft', soil }).daylightOffset?.to('ft').toString();
    expect(offset('stable-rock')).toBe('0');
    expect(offset('A')).toBe('7.5');
    expect(offset('B')).toBe('10');
    expect(offset('C')).toBe('15');
    expect(offset('not-classified')).toBe('15');
  });

  test('soil A for a day, to 12 ft', () => {
    const run = (more: object) =>
      excavationGates({ depth: '12 ft', soil: 'A', openTime: '24 h', ...more }).runOverRise;
    expect(run({})).toBe('0.5');
    expect(run({ openTime: '24.1 h' })).toBe('0.75');
    expect(run({ depth: '12.1 ft' })).toBe('0.75');
    expect(run({ soil: 'B' })).toBe('1');
    expect(run({ openTime: undefined })).toBe('0.75');
  });

  test('beyond 20 ft the table ends: no slope is given', () => {
    const deep = excavationGates({ depth: '21 ft', soil: 'B' });
    expect(deep.isBeyondTable).toBe(true);
    expect([deep.daylightOffset, deep.runOverRise]).toEqual([null, null]);
    expect(excavationGates({ depth: '20 ft', soil: 'B' }).isBeyondTable).toBe(false);
  });

  test('a footing: below its bottom, and below a line of 1 to 1 from it', () => {
    const at = (distance: string, depth = '5 ft') =>
      excavationGates({ depth, soil: 'B', footing: { distance, bottom: '2 ft' } });
    const footings = (distance: string, depth?: string) =>
      at(distance, depth)
        .gates.map(({ id }) => id)
        .filter((id) => id.startsWith('footing'));
    expect(footings('3 ft')).toEqual(['footing-level']);
    expect(footings('2.999 ft')).toEqual(['footing-level', 'footing-line']);
    expect(footings('0 ft', '2 ft')).toEqual([]);
    expect(footings('0 ft', '2.001 ft')).toEqual(['footing-level', 'footing-line']);
    const near = at('2.999 ft');
    expect(near.gates.slice(-2).map(({ status }) => status)).toEqual(['read', 'read']);
    expect(near.gates.at(-1)?.source).toBe('plumbing-code');
    expect(near.gates.at(-2)?.text.us).toMatch(/registered engineer/);
    expect(near.cautions.map(({ id }) => id)).toContain('structure');
  });

  test('says who decides', () => {
    expect(excavationGates({ depth: '1 ft', soil: 'A' }).whoDecides).toMatch(
      /competent person .* not an approval/,
    );
  });

  testRefusals(
    excavationGates,
    {
      depth: '1 m',
      soil: 'A',
      spoilDistance: '1 m',
      openTime: '8 h',
      footing: { distance: '1 m', bottom: '1 m' },
    },
    [
      ['depth', '0 m', 'NOT_POSITIVE'],
      ['depth', 4, 'UNIT_MISSING'],
      ['soil', 'clay', 'UNKNOWN_CHOICE'],
      ['soil', undefined, 'REQUIRED'],
      ['spoilDistance', '-1 m', 'NEGATIVE'],
      ['openTime', '0 h', 'NOT_POSITIVE'],
      ['footing.distance', undefined, 'REQUIRED'],
      ['footing.bottom', '-1 m', 'NEGATIVE'],
    ],
  );
});

describe('water in an open dig', () => {
  test('the dig, and what drains into it', () => {
    const water = waterInDig({
      area: '50 m2',
      rain: '20 mm',
      drainsIn: [
        { area: '100 m2', coefficient: 0.9 },
        { area: '20 m2', coefficient: '1/2' },
      ],
      pump: '100 l/min',
    });
    expect(water.volume.to('m3').toString()).toBe('3');
    expect(water.depth.to('mm').toString()).toBe('60');
    expect(water.pumpTime?.to('min').toString()).toBe('30');
    expect(waterInDig({ area: '50 m2', rain: '20 mm' }).pumpTime).toBeNull();
  });

  testRefusals(
    waterInDig,
    {
      area: '5 m2',
      rain: '1 in',
      drainsIn: [{ area: '1 m2', coefficient: 1 }],
      pump: '1 l/s',
    },
    [
      ['area', '0 m2', 'NOT_POSITIVE'],
      ['rain', 18, 'UNIT_MISSING'],
      ['drainsIn', [], 'EMPTY_LIST'],
      ['drainsIn.0.coefficient', 1.1, 'OUT_OF_RANGE', 'drainsIn[0].coefficient'],
      ['pump', '0 l/min', 'NOT_POSITIVE'],
    ],
  );
});

describe('area that can be closed today', () => {
  const valid = {
    stone: '21 t',
    moisture: 0.05,
    thickness: '0.2 m',
    compactedDryDensity: '2 t/m3',
    crew: { area: '10 m2', time: '1 h', timeLeft: '90 min' },
  };

  test('by the crew, by the stone', () => {
    const today = closableArea(valid);
    expect(today.byStone.to('m2').toString()).toBe('50');
    expect(today.byCrew?.to('m2').toString()).toBe('15');
    expect([today.area.to('m2').toString(), today.limitedBy]).toEqual(['15', 'crew']);
    const long = closableArea({ ...valid, crew: { ...valid.crew, timeLeft: '5 h' } });
    expect([long.area.to('m2').toString(), long.limitedBy]).toEqual(['50', 'stone']);
    const stoneOnly = without(valid, 'crew');
    expect(closableArea(stoneOnly).byCrew).toBeNull();
  });

  testRefusals(closableArea, valid, [
    ['stone', '14', 'UNIT_MISSING'],
    ['moisture', undefined, 'REQUIRED'],
    ['moisture', 5, 'OUT_OF_RANGE'],
    ['thickness', '0 mm', 'NOT_POSITIVE'],
    ['compactedDryDensity', '9 t/m3', 'OUT_OF_RANGE'],
    ['crew.time', '0 h', 'NOT_POSITIVE'],
    ['crew.timeLeft', undefined, 'REQUIRED'],
  ]);
});

describe('soft spot', () => {
  const valid = {
    area: '4 m2',
    depth: '0.5 m',
    compactedPerLoose: 0.8,
    compactedDryDensity: '2 t/m3',
    moisture: 0.05,
    perimeter: '8 m',
    lap: '0.25 m',
  };

  test('spoil, stone and geotextile', () => {
    const spot = softSpot(valid);
    expect([spot.spoil.state, spot.spoil.to('m3').toString()]).toEqual(['bank', '2']);
    expect(spot.stoneCompacted.to('m3').toString()).toBe('2');
    expect(spot.stoneLoose.to('m3').toString()).toBe('2.5');
    expect(spot.dryMass.to('t').toString()).toBe('4');
    expect(spot.deliveredMass.to('t').toString()).toBe('4.2');
    expect(spot.geotextile?.to('m2').toString()).toBe('10'); // 4 + 8 x 0.75
    expect(spot.working).toHaveLength(4);
    const bare = without(without(valid, 'perimeter'), 'lap');
    expect(softSpot(bare).geotextile).toBeNull();
    expect(softSpot(bare).working).toHaveLength(3);
  });

  test('a lap of geotextile needs the perimeter', () => {
    const bare = without(valid, 'perimeter');
    const { path, message } = expectFault(() => softSpot(bare), 'REQUIRED');
    expect(path).toEqual(['perimeter']);
    expect(message).toContain('missing. lap needs it');
  });

  testRefusals(softSpot, valid, [
    ['area', undefined, 'REQUIRED'],
    ['depth', '6 m', 'OUT_OF_RANGE'],
    ['compactedPerLoose', 1.25, 'OUT_OF_RANGE'],
    ['compactedDryDensity', '0 t/m3', 'NOT_POSITIVE'],
    ['moisture', undefined, 'REQUIRED'],
    ['perimeter', '0 m', 'NOT_POSITIVE'],
    ['lap', '-1 m', 'NEGATIVE'],
  ]);
});

describe('base taper', () => {
  const valid = { first: '10 in', second: '6 in', slope: '1:3', width: '4 ft', spacing: '5 in' };

  test('runs from thick to thin, on the thin side', () => {
    const taper = baseTaper(valid);
    expect(taper.length.to('in').toString()).toBe('12');
    expect(taper.volume.to('ft3').toNumber()).toBeCloseTo((4 * 8) / 12, 14);
    expect(taper.side).toBe('second');
    expect(
      taper.stations.map(({ station, thickness }) => [
        station.to('in').toString(),
        thickness.toNumber('in').toFixed(4),
      ]),
    ).toEqual([
      ['0', '10.0000'],
      ['5', '8.3333'],
      ['10', '6.6667'],
      ['12', '6.0000'],
    ]);
    expect(baseTaper({ ...valid, first: '6 in', second: '10 in' }).side).toBe('first');
  });

  test('equal bases need none', () => {
    const { length, side, stations } = baseTaper({ ...valid, second: '10 in' });
    expect([length.isZero(), side, stations.length]).toEqual([true, 'none', 1]);
  });

  test('four parts without a spacing', () => {
    const rest = without(valid, 'spacing');
    expect(baseTaper(rest).stations).toHaveLength(5);
  });

  testRefusals(baseTaper, valid, [
    ['first', '0 in', 'NOT_POSITIVE'],
    ['second', undefined, 'REQUIRED'],
    ['slope', '4', 'UNIT_MISSING'],
    ['slope', '120%', 'OUT_OF_RANGE'],
    ['width', '0 ft', 'NOT_POSITIVE'],
    ['spacing', '0.01 in', 'CAPACITY_EXCEEDED'],
  ]);
});
