import { describe, expect, test } from 'vitest';
import {
  baseTaper,
  closableArea,
  cuttingEdge,
  excavationGates,
  rootZone,
  softSpot,
  waterInDig,
  wheelStressScreen,
} from 'settline/site';
import type { OutlineInput } from 'settline/outline';
import { testRefusals } from '../refusals.js';
import { without } from '../without.js';

describe('root zone', () => {
  const tree = { trunkDiameter: '12 in', rule: { radiusPerDiameter: 12 } } as const;
  const cut = (near: string, far?: string) =>
    rootZone({ ...tree, dig: far === undefined ? { near } : { near, far } }).cut;

  test('radius by the rule, and no less than the least', () => {
    expect(rootZone(tree).radius.to('ft').toString()).toBe('12');
    expect(rootZone(tree).closestTrench.to('ft').toString()).toBe('3');
    expect(rootZone(tree).area.toNumber('ft2')).toBeCloseTo(144 * Math.PI, 10);
    const least = rootZone({ ...tree, rule: { radiusPerDiameter: 1, leastRadius: '6 ft' } });
    expect(least.radius.to('ft').toString()).toBe('6');
    expect(least.cut).toBeNull();
  });

  test('a line through the trunk cuts a half, one past the zone nothing, one behind it all', () => {
    expect(cut('0 ft')?.share).toBe(0.5);
    expect(cut('12 ft')?.share).toBe(0);
    expect(cut('13 ft')?.area.isZero()).toBe(true);
    expect(cut('-12 ft')?.share).toBe(1);
    expect(cut('-30 ft')?.share).toBe(1);
  });

  test('a strip is the difference of its edges', () => {
    expect(cut('-1 ft', '1 ft')?.share).toBeCloseTo(
      (cut('-1 ft')?.share ?? 0) - (cut('1 ft')?.share ?? 0),
      15,
    );
    expect(cut('-30 ft', '30 ft')?.share).toBe(1);
    expect(cut('20 ft', '30 ft')?.share).toBe(0);
  });

  test('distance to the trunk, and three diameters', () => {
    expect(cut('4 ft')?.distance.to('ft').toString()).toBe('4');
    expect(cut('4 ft')?.diameters).toBe(4);
    expect(cut('-2 ft', '1 ft')?.distance.isZero()).toBe(true);
    expect(cut('-9 ft', '-5 ft')?.distance.to('ft').toString()).toBe('5');
    expect(cut('-9 ft')?.distance.isZero()).toBe(true);
    const reached = (near: string) => cut(near)?.marks.map((mark) => mark.reached);
    expect(reached('3 ft')).toEqual([true, false]);
    expect(reached('2.9999 ft')).toEqual([true, true]);
    expect(reached('6 ft')).toEqual([false, false]);
  });

  test('the mark at a quarter: just past it, and just before', () => {
    // a line at 0.40397 R cuts a quarter
    expect(cut('4.8477 ft')?.share).toBeLessThan(0.25);
    expect(cut('4.8477 ft')?.marks[0]?.reached).toBe(false);
    expect(cut('4.8476 ft')?.share).toBeGreaterThan(0.25);
    expect(cut('4.8476 ft')?.marks[0]?.reached).toBe(true);
  });

  test('what to do', () => {
    const action = (near?: string) =>
      rootZone({ ...tree, ...(near === undefined ? {} : { dig: { near } }) }).action;
    expect(action()).toMatch(/^Fence the root zone off/);
    expect(action('1 ft')).toMatch(/^Stop: .* arborist/);
    expect(action('8 ft')).toMatch(/ask an arborist/);
    expect(action('12 ft')).toMatch(/stays out of the zone/);
  });

  testRefusals(rootZone, { ...tree, dig: { near: '5 ft', far: '9 ft' } }, [
    ['trunkDiameter', 12, 'UNIT_MISSING'],
    ['trunkDiameter', '0 in', 'NOT_POSITIVE'],
    ['trunkDiameter', '12 m', 'OUT_OF_RANGE'],
    ['rule', undefined, 'REQUIRED'],
    ['rule.radiusPerDiameter', undefined, 'REQUIRED'],
    ['rule.radiusPerDiameter', 0.5, 'OUT_OF_RANGE'],
    ['rule.radiusPerDiameter', 50, 'OUT_OF_RANGE'],
    ['rule.leastRadius', '0 ft', 'NOT_POSITIVE'],
    ['dig.near', undefined, 'REQUIRED'],
    ['dig.far', '5 ft', 'NOT_INCREASING'],
  ]);
});

describe('root zone beside a drawn dig', () => {
  const strip = {
    unit: 'ft',
    points: [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ],
  } as const;
  const tree = { trunkDiameter: '12 in', rule: { radiusPerDiameter: 12 } } as const;
  const cut = (x: string, y: string, outline: OutlineInput = strip) =>
    rootZone({ ...tree, dig: { outline, trunk: { x, y } } }).cut;

  test('a long edge cuts what a straight line cuts', () => {
    const straight = rootZone({ ...tree, dig: { near: '5 ft' } }).cut;
    const drawn = cut('50 ft', '-5 ft');
    expect(drawn?.share).toBeCloseTo(straight?.share ?? 0, 11);
    expect(drawn?.distance.to('ft').toString()).toBe('5');
    expect(drawn?.diameters).toBe(5);
    expect(drawn?.area.toNumber('ft2')).toBeCloseTo(straight?.area.toNumber('ft2') ?? 0, 8);
  });

  test('at a corner a quarter, and only outside of it near', () => {
    expect(cut('0 ft', '0 ft')?.share).toBe(0.25);
    expect(cut('0 ft', '0 ft')?.marks[0]?.reached).toBe(false);
    expect(cut('0 ft', '0 ft')?.distance.isZero()).toBe(true);
    // 3-4-5 beside the corner
    const near = cut('-3 ft', '-4 ft');
    expect(near?.distance.to('ft').toString()).toBe('5');
    // of the circle of 12 ft: the corner region x > 3, y > 4, by integrating sqrt(144 - x^2) - 4
    const [a, b] = [3, Math.sqrt(128)];
    const under = (x: number) => (x * Math.sqrt(144 - x * x) + 144 * Math.asin(x / 12)) / 2;
    expect(near?.share).toBeCloseTo((under(b) - under(a) - 4 * (b - a)) / (144 * Math.PI), 11);
  });

  test('a trunk in the dig, and past its zone', () => {
    expect(cut('50 ft', '50 ft')?.share).toBe(1);
    expect(cut('50 ft', '50 ft')?.distance.isZero()).toBe(true);
    expect(cut('50 ft', '-12 ft')?.share).toBe(0);
    expect(cut('50 ft', '-12 ft')?.area.isZero()).toBe(true);
    expect(cut('50 ft', '-99 ft')?.share).toBe(0);
    expect(cut('-9 ft', '-9 ft')?.share).toBe(0);
    const beside = rootZone({
      ...tree,
      dig: { outline: strip, trunk: { x: '0 ft', y: '-12 ft' } },
    });
    expect(beside.action).toMatch(/stays out of the zone/);
  });

  test('a tree in an island: only what lies round the island is cut', () => {
    const island = [
      [40, 40],
      [60, 40],
      [60, 60],
      [40, 60],
    ] as const;
    const drawn = cut('50 ft', '50 ft', { ...strip, holes: [island] });
    expect(drawn?.distance.to('ft').toString()).toBe('10');
    // four segments of the circle beyond lines at 10 ft
    const segment = rootZone({ ...tree, dig: { near: '10 ft' } }).cut?.share ?? 0;
    expect(drawn?.share).toBeCloseTo(4 * segment, 11);
  });

  test('an edge that is an arc about the trunk', () => {
    const outline = {
      unit: 'ft',
      points: [
        [-6, 0],
        [6, 0],
        [50, 0],
        [50, 50],
        [-50, 50],
        [-50, 0],
      ],
      arcs: [{ edge: 0, bulgeMiddleOrdinate: -6 }],
    } as const;
    const drawn = cut('0 ft', '0 ft', outline);
    // half the zone less a half circle of 6 ft
    expect(drawn?.share).toBeCloseTo(0.5 - 0.125, 5);
    expect(drawn?.distance.toNumber('ft')).toBeCloseTo(6, 4);
  });

  test('three diameters exactly are kept, by a slanted edge too', () => {
    const slanted = {
      unit: 'ft',
      points: [
        [0, 5],
        [4, 2],
        [40, 40],
      ],
    } as const;
    // the foot of the trunk lies 4 ft from the line 3 x + 4 y = 20
    expect(cut('0 ft', '0 ft', slanted)?.distance.to('ft').toString()).toBe('4');
    const tight = (diameter: string) =>
      rootZone({
        trunkDiameter: diameter,
        rule: { radiusPerDiameter: 12 },
        dig: { outline: slanted, trunk: { x: '0 ft', y: '0 ft' } },
      }).cut?.marks[1]?.reached;
    expect(tight('16 in')).toBe(false);
    expect(tight('16.001 in')).toBe(true);
  });

  testRefusals(rootZone, { ...tree, dig: { outline: strip, trunk: { x: '0 ft', y: '-5 ft' } } }, [
    [
      'dig.outline',
      {
        unit: 'ft',
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      'TOO_FEW_POINTS',
      'dig.outline.points',
    ],
    ['dig.outline', undefined, 'REQUIRED', 'dig.near'],
    ['dig.near', '5 ft', 'EITHER_OR', 'dig'],
    ['dig.far', '5 ft', 'EITHER_OR', 'dig'],
    ['dig.trunk', undefined, 'REQUIRED'],
    ['dig.trunk.x', 4, 'UNIT_MISSING'],
    ['dig.trunk.y', '11 km', 'OUT_OF_RANGE', 'dig.trunk'],
  ]);
});

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
    expect(deep.beyondTable).toBe(true);
    expect([deep.daylightOffset, deep.runOverRise]).toEqual([null, null]);
    expect(excavationGates({ depth: '20 ft', soil: 'B' }).beyondTable).toBe(false);
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
    expect(near.gates.at(-2)?.text).toMatch(/registered engineer/);
    expect(near.cautions.map(({ id }) => id)).toContain('structure');
  });

  test('says who decides', () => {
    expect(excavationGates({ depth: '1 ft', soil: 'A' }).decides).toMatch(
      /competent person .* approves nothing/,
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
    const bare = without(valid, 'perimeter');
    expect(softSpot(bare).geotextile).toBeNull();
    expect(softSpot(bare).working).toHaveLength(3);
  });

  testRefusals(softSpot, valid, [
    ['area', undefined, 'REQUIRED'],
    ['depth', '6 m', 'OUT_OF_RANGE'],
    ['compactedPerLoose', 1.25, 'RATIO_OUT_OF_RANGE'],
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

describe('wheel stress screen', () => {
  const valid = {
    wheelLoad: '9 kN',
    tyrePressure: '400 kPa',
    depth: '0.35 m',
    shearStrength: '90/7 kPa',
    geotextile: false,
  };

  test('exactly at what the rule allows is not over it', () => {
    // a = 0.15 m: 9 kN on 0.5 m by 0.5 m is 36 kPa, and 2.8 x 90 / 7 = 36
    const screen = wheelStressScreen(valid);
    expect(screen.contactSide.to('m').toString()).toBe('0.15');
    expect(screen.stress.to('kPa').toString()).toBe('36');
    expect([screen.ratio, screen.verdict]).toEqual([1, 'under']);
    expect(wheelStressScreen({ ...valid, depth: '0.3499 m' }).verdict).toBe('over');
  });

  test('a geotextile lets the rule allow more, and it stays a screen', () => {
    const screen = wheelStressScreen({ ...valid, geotextile: true });
    expect(screen.permissible.toNumber('kPa')).toBeCloseTo(450 / 7, 12);
    expect(screen.scope).toBe('screen-only');
    expect(screen.note).toMatch(/out of scope for design/);
  });

  testRefusals(wheelStressScreen, valid, [
    ['wheelLoad', '1000 kg', 'UNIT_UNKNOWN'],
    ['tyrePressure', '0 kPa', 'NOT_POSITIVE'],
    ['depth', undefined, 'REQUIRED'],
    ['shearStrength', 40, 'UNIT_MISSING'],
    ['geotextile', undefined, 'REQUIRED'],
    ['geotextile', 'yes', 'WRONG_TYPE'],
  ]);
});

describe('cutting edge', () => {
  const even = {
    frontLeft: '400 mm',
    frontRight: '400 mm',
    rearLeft: '400 mm',
    rearRight: '400 mm',
  };
  const machine = {
    fullRadius: '400 mm',
    wheelbase: '1 m',
    track: '1.2 m',
    reach: '0.85 m',
    edgeWidth: '1.8 m',
  };
  const millimetres = (loadedRadius: typeof even, wear?: { left: string; right: string }) => {
    const edge = cuttingEdge({
      ...machine,
      loadedRadius,
      ...(wear === undefined ? {} : { wear }),
    });
    return [edge.left, edge.middle, edge.right, edge.across].map((q) => q.to('mm').toString());
  };

  test('good tyres move nothing, wear lifts the edge', () => {
    expect(millimetres(even)).toEqual(['0', '0', '0', '0']);
    expect(millimetres(even, { left: '6 mm', right: '2 mm' })).toEqual(['6', '4', '2', '4']);
  });

  test('soft front tyres drop the edge, soft rear tyres lift it', () => {
    const soft = { frontLeft: '380 mm', frontRight: '380 mm' };
    expect(millimetres({ ...even, ...soft })[1]).toBe('-37');
    expect(millimetres({ ...even, rearLeft: '380 mm', rearRight: '380 mm' })[1]).toBe('17');
  });

  test('soft on the left: the left end hangs', () => {
    const soft = { ...even, frontLeft: '380 mm', rearLeft: '380 mm' };
    expect(millimetres(soft)).toEqual(['-25', '-10', '5', '-30']);
    const { crossTilt } = cuttingEdge({ ...machine, loadedRadius: soft });
    expect(crossTilt.toNumber('percent')).toBeCloseTo(-5 / 3, 12);
  });

  testRefusals(
    cuttingEdge,
    { ...machine, loadedRadius: even, wear: { left: '0 mm', right: '0 mm' } },
    [
      ['loadedRadius.frontLeft', undefined, 'REQUIRED'],
      ['loadedRadius.rearRight', '0 mm', 'NOT_POSITIVE'],
      ['fullRadius', 400, 'UNIT_MISSING'],
      ['wheelbase', '0 m', 'NOT_POSITIVE'],
      ['track', '0 m', 'NOT_POSITIVE'],
      ['edgeWidth', undefined, 'REQUIRED'],
      ['reach', '-1 m', 'NEGATIVE'],
      ['wear.left', '-1 mm', 'NEGATIVE'],
      ['wear.right', undefined, 'REQUIRED'],
    ],
  );
});
