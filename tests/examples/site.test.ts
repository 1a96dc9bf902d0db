// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import {
  axleGroupLimit,
  cuttingEdge,
  machineTime,
  plateTime,
  spoilLoads,
  spoilPile,
  wheelStressScreen,
} from 'settline/haul';
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
import { stateVolume } from 'settline/volumes';
import { expectPrinted } from '../printed.js';

describe('invented worked examples', () => {
  test('hand digging: a 0.1 m line, 18 in each side, 5.7 m at 60 degrees, 0.4 m deep', () => {
    const dig = handDig({
      digWidth: '5.7 m',
      depth: '0.4 m',
      crossingAngle: '60 deg',
      lines: [{ id: 'line', width: '0.1 m', tolerance: '18 in' }],
      rate: '0.35 m3/h',
    });
    expectPrinted(dig.zones[0]?.width.toNumber('m') ?? 0, '1.0144');
    expectPrinted(dig.along.toNumber('m'), '6.5818');
    expectPrinted(dig.volume.toNumber('m3'), '2.6706');
    expectPrinted(dig.time?.toNumber('h') ?? 0, '7.63');
  });

  test('cover: found at 0.52 m, dig 0.435 m, least 0.15 m', () => {
    const { cover, code } = utilityCover({
      found: '0.52 m',
      dig: '0.435 m',
      minimumCover: '0.15 m',
    });
    expectPrinted(cover.toNumber('m'), '0.085');
    expect(code).toBe('less-than-minimum');
  });

  test('root zone: 16 in at 1 ft per inch, cut at 10 ft', () => {
    const { radius, closestTrench, cut } = rootZone({
      trunkDiameter: '16 in',
      rule: { radiusPerDiameter: 12 },
      dig: { near: '10 ft' },
    });
    expectPrinted(radius.toNumber('ft'), '16');
    expectPrinted(cut?.area.toNumber('ft2') ?? 0, '104.4');
    expectPrinted(100 * (cut?.share ?? 0), '12.98');
    expectPrinted(closestTrench.toNumber('ft'), '4');
  });

  test('locate: Wednesday 2030-05-22, two working days, Friday a holiday', () => {
    const { notice, earliest } = locateWindow({
      request: '2030-05-22',
      rule: {
        workingDays: 2,
        requestDayCounts: false,
        start: 'working-day-after',
        weekend: ['Saturday', 'Sunday'],
        holidays: ['2030-05-24'],
        validity: { days: 1, count: 'calendar', from: 'start' },
      },
    });
    expect(notice).toEqual(['2030-05-23', '2030-05-27']);
    expect(earliest).toBe('2030-05-28');
  });

  test('spoil: 42 m3, 30 % swell, 1900 kg/m3, trucks of 11 m3 and 13 t', () => {
    const spoil = spoilLoads({
      bank: stateVolume('42 m3', 'bank'),
      loosePerBank: 1.3,
      bankDryDensity: '1900 kg/m3',
      moisture: 0,
      boxVolume: '11 m3',
      payload: '13 t',
    });
    expectPrinted(spoil.loose.toNumber('m3'), '54.6');
    expectPrinted(spoil.mass.toNumber('t'), '79.8');
    expect([spoil.loadsByVolume, spoil.loadsByMass, spoil.limitedBy]).toEqual([5, 7, 'mass']);
    expect(spoil.loads).toBe(7);
    expectPrinted(spoil.perLoad.volume.toNumber('m3'), '8.89');
  });

  test('axle groups: 3 axles over 18 ft, a tandem of 4 ft', () => {
    expect(axleGroupLimit({ axles: 3, spread: '18 ft' }).limit.to('lb').toString()).toBe('49500');
    expect(axleGroupLimit({ axles: 2, spread: '4 ft' }).limit.to('lb').toString()).toBe('34000');
  });

  test('old paving: 48 m2 of asphalt, 90 mm, 2400 kg/m3, 2400 over 4050 loose', () => {
    const old = oldPaving({
      layers: [
        {
          material: 'asphalt',
          area: '48 m2',
          thickness: '0.09 m',
          inPlaceDensity: '2400 kg/m3',
          looseDensity: { value: `${(2400 * 2400) / 4050}`, unit: 'kg/m3' },
        },
      ],
    });
    expectPrinted(old.inPlace.toNumber('m3'), '4.32');
    expectPrinted(old.mass.toNumber('t'), '10.37');
    expectPrinted(old.loose.toNumber('m3'), '7.29');
  });

  test('machine: 42 m3, bucket 0.18 m3 at 0.9, 22 s, 50-minute hour', () => {
    const dig = machineTime({
      bank: stateVolume('42 m3', 'bank'),
      loosePerBank: 1.3,
      bucket: '0.18 m3',
      fillFactor: 0.9,
      cycle: '22 s',
      efficiency: '0.8333',
    });
    expect(dig.cycles).toBe(338);
    expectPrinted(dig.loosePerHour.toNumber('m3/h'), '22.09');
    expectPrinted(dig.time.toNumber('h'), '2.47');
  });

  test('sides: 1.3 m in soil C', () => {
    const { daylightOffset, gates } = excavationGates({ depth: '1.3 m', soil: 'C' });
    expectPrinted(daylightOffset?.toNumber('m') ?? 0, '1.95');
    const ids = gates.map(({ id }) => id);
    expect(ids).toContain('egress');
    expect(ids).not.toContain('protective-system');
    expect(ids).toContain('competent-person');
  });

  test('cutting edge: 20 mm lost in front, and on one side', () => {
    const machine = {
      fullRadius: '400 mm',
      wheelbase: '1 m',
      track: '1.2 m',
      reach: '0.85 m',
      edgeWidth: '1.8 m',
    };
    const radii = (fl: string, fr: string, rl: string) => ({
      frontLeft: fl,
      frontRight: fr,
      rearLeft: rl,
      rearRight: '400 mm',
    });
    const front = cuttingEdge({ ...machine, loadedRadius: radii('380 mm', '380 mm', '400 mm') });
    expectPrinted(-front.middle.toNumber('mm'), '37');
    const side = cuttingEdge({ ...machine, loadedRadius: radii('380 mm', '400 mm', '380 mm') });
    expectPrinted(-side.crossTilt.toNumber('percent'), '1.667');
    expectPrinted(-side.across.toNumber('mm'), '30');
  });

  test('soft spot: 3.2 m2, 0.25 m, ratio 0.8, 2.2 t/m3', () => {
    const spot = softSpot({
      area: '3.2 m2',
      depth: '0.25 m',
      compactedPerLoose: 0.8,
      compactedDryDensity: '2.2 t/m3',
      moisture: 0,
    });
    expectPrinted(spot.spoil.toNumber('m3'), '0.8');
    expectPrinted(spot.stoneLoose.toNumber('m3'), '1');
    expectPrinted(spot.dryMass.toNumber('t'), '1.76');
  });

  test('plate: 72.4 m2, 0.5 m, a tenth of overlap, 20 m/min, 4 passes, 3 lifts', () => {
    const plate = plateTime({
      area: '72.4 m2',
      plateWidth: '0.5 m',
      overlap: 0.1,
      speed: '20 m/min',
      passes: 4,
      lifts: 3,
      efficiency: 1,
    });
    expectPrinted(plate.perPass.toNumber('min'), '8.04');
    expectPrinted(plate.time.toNumber('min'), '96.5');
  });

  test('rain: 18 mm on 72.4 m2, a pump of 120 l/min; 14 t of stone for 0.2 m', () => {
    const water = waterInDig({ area: '72.4 m2', rain: '18 mm', pump: '120 l/min' });
    expectPrinted(water.volume.toNumber('m3'), '1.303');
    expectPrinted(water.pumpTime?.toNumber('min') ?? 0, '10.9');
    const today = closableArea({
      stone: '14 t',
      moisture: 0,
      thickness: '0.2 m',
      compactedDryDensity: '2.15 t/m3',
    });
    expectPrinted(today.area.toNumber('m2'), '32.6');
  });

  test('heap: 8 m3 at 35 degrees', () => {
    const heap = spoilPile({
      volume: stateVolume('8 m3', 'loose'),
      reposeAngle: '35 deg',
      setBack: '2 ft',
    });
    expectPrinted(heap.width.dividedBy(2).toNumber('m'), '2.218');
    expectPrinted(heap.height.toNumber('m'), '1.553');
  });

  test('taper: 0.2 m to 0.1 m at 1:4, 1.5 m wide', () => {
    const taper = baseTaper({ first: '0.2 m', second: '0.1 m', slope: '1:4', width: '1.5 m' });
    expectPrinted(taper.length.toNumber('m'), '0.4');
    expectPrinted(taper.volume.toNumber('m3'), '0.09');
  });

  test('wheel: 8 kN at 500 kPa, 285 mm down, 40 kPa', () => {
    const screen = wheelStressScreen({
      wheelLoad: '8000 N',
      tyrePressure: '500 kPa',
      depth: '0.285 m',
      shearStrength: '40 kPa',
      geotextile: false,
    });
    expectPrinted(screen.contactSide.toNumber('m'), '0.1265');
    expectPrinted(screen.stress.toNumber('kPa'), '47.2');
    expectPrinted(screen.permissible.toNumber('kPa'), '112');
    expectPrinted(screen.ratio, '0.422');
  });
});
