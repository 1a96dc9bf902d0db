// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import {
  combineSlopes,
  fallBetween,
  gradeBreak,
  gradeLine,
  planeThrough,
  rampRun,
  sillClearance,
  stepLayout,
  valleyLine,
  verticalCurve,
  warpedSurface,
} from 'settline/grading';
import { gaugeBlock } from 'settline/levelling';

import { slope, type Length, type LengthUnit, type Slope } from 'settline/units';
import { expectPrinted } from '../printed.js';
const number = (value: Length | null | undefined, unit: LengthUnit): number =>
  value?.toNumber(unit) ?? Number.NaN;
const percent = (value: Slope): number => value.toNumber('percent');

test('cross slope from a crown', () => {
  // Closed form crown / cross slope; DERIVED
  const drop = (half: string) =>
    gradeLine({
      points: [
        { station: '0 m', elevation: '0 m' },
        { station: half, grade: '-2%' },
      ],
    }).elevationAt(half);
  expectPrinted(-number(drop('12 ft'), 'ft'), '0.24');
  expectPrinted(-number(drop('12 ft'), 'in'), '2.88');
  expectPrinted(-number(drop('3.6 m'), 'm'), '0.072');
});

describe('invented examples, computed by an independent script', () => {
  test('fall between two fixed levels', () => {
    const drive = fallBetween({
      from: '100 m',
      to: '99.61 m',
      distance: '14.5 m',
      minimumFall: '2%',
    });
    expectPrinted(percent(drive.fall), '2.69');
    expectPrinted(number(drive.neededDrop, 'm'), '0.29');
    expect(drive.isEnough).toBe(true);
  });

  test('plane through three fixed elevations', () => {
    const plane = planeThrough({
      points: [
        { x: '0 m', y: '0 m', z: '30 m' },
        { x: '11.8 m', y: '0.4 m', z: '29.69 m' },
        { x: '0.6 m', y: '4.9 m', z: '29.91 m' },
      ],
    });
    expectPrinted(percent(plane.gradeX), '-2.5755');
    expectPrinted(percent(plane.gradeY), '-1.5214');
    expectPrinted(percent(plane.slope), '2.9913');
    // printed as 30.57 degrees counter-clockwise from +x
    expectPrinted(90 - (plane.downhillAzimuth?.toNumber('deg') ?? Number.NaN), '30.57');
    expectPrinted(number(plane.elevationAt({ x: '6 m', y: '2 m' }), 'm'), '29.815');
  });

  test('plane of least squares', () => {
    const corners = [
      [0, 0, 30],
      [12, 0, 29.7],
      [12, 5, 29.585],
      [0, 5, 29.895],
      [6, 2.5, 29.8],
    ] as const;
    const plane = planeThrough({
      points: corners.map(([x, y, z]) => ({
        x: { value: x, unit: 'm' },
        y: { value: y, unit: 'm' },
        z: { value: z, unit: 'm' },
      })),
    });
    expectPrinted(percent(plane.gradeX), '-2.5417');
    expectPrinted(percent(plane.gradeY), '-2.2');
    const residuals = plane.residuals.map(({ residual }) => residual.to('mm').toString());
    expect(residuals).toEqual(['-3.5', '1.5', '-3.5', '1.5', '4']);
  });

  test('warped surface', () => {
    const surface = warpedSurface({
      length: '12 m',
      width: '5 m',
      corners: { startRight: '30 m', endRight: '29.7 m', endLeft: '29.52 m', startLeft: '29.9 m' },
      paver: { length: '200 mm', width: '100 mm' },
    });
    expect(surface.centre.to('m').toString()).toBe('29.78');
    expect(surface.twist.to('mm').toString()).toBe('-80');
    expectPrinted(percent(surface.grades.right), '-2.5');
    expectPrinted(percent(surface.grades.left), '-3.167');
    expectPrinted(percent(surface.grades.start), '-2');
    expectPrinted(percent(surface.grades.end), '-3.6');
    expectPrinted(number(surface.paverRock, 'mm'), '0.0267');
  });

  test('grade at a stake', () => {
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '30 m' },
        { station: '14.5 m', elevation: '29.71 m' },
      ],
    });
    expect(line.elevationAt('6 m').to('m').toString()).toBe('29.88');
  });

  test('grade break', () => {
    const edge = gradeBreak({
      before: '-2%',
      after: '-11%',
      vehicle: { wheelbase: '2.8 m', underside: '140 mm' },
      limit: { change: '3%', distance: '11 ft' },
    });
    expectPrinted(percent(edge.change.abs()), '9');
    expect(edge.transition?.breaks).toBe(3);
    expectPrinted(number(edge.transition?.length, 'm'), '6.706');
    expect(edge.clearance?.reach.to('mm').toString()).toBe('63');
  });

  test('ramp, threshold and cross slope of a walk', () => {
    expect(rampRun({ rise: '0.15 m', maximumSlope: '1:20' }).run.to('m').toString()).toBe('3');
    expect(rampRun({ rise: '0.15 m', maximumSlope: '1:12' }).run.to('m').toString()).toBe('1.8');
    expect(gaugeBlock({ slope: '1:48', length: '1.2 m' }).block.to('mm').toString()).toBe('25');
  });

  test('steps', () => {
    const steps = stepLayout({ rise: '24.4 in', maximumRiser: '6.5 in', tread: '12 in' });
    expect(steps.risers).toBe(4);
    expect(steps.riser.to('in').toString()).toBe('6.1');
    expect(steps.run.to('in').toString()).toBe('36');
    expect(steps.comfort.value.to('in').toString()).toBe('24.2');
    expect(steps.comfort.isComfortable).toBe(true);
  });

  test('valley of two planes', () => {
    const square = [
      ['0 m', '0 m'],
      ['12 m', '0 m'],
      ['12 m', '8 m'],
      ['0 m', '8 m'],
    ] as const;
    const valley = valleyLine({
      first: { gradeX: '-2%', gradeY: '0%', point: { x: '0 m', y: '0 m', z: '30 m' } },
      second: { gradeX: '0%', gradeY: '-3%', point: { x: '0 m', y: '0 m', z: '29.8 m' } },
      path: square.map(([x, y]) => ({ x, y })),
    });
    expectPrinted(percent(valley.slope), '1.664');
    // -0.02 x + 0.03 y + 0.20 = 0 meets y = 0 at x = 10
    expect(valley.stakes[0]?.x.to('m').toString()).toBe('10');
    expect(valley.stakes[0]?.y.to('m').toString()).toBe('0');
  });

  test('sill clearance', () => {
    const door = sillClearance({
      sill: '30.2 m',
      finishedGradeAtWall: '30.04 m',
      minimumClearance: '150 mm',
      away: { elevation: '29.97 m', distance: '3.05 m' },
    });
    expect(door.clearance.to('mm').toString()).toBe('160');
    expectPrinted(percent(door.fallAway?.fall ?? slope(0, 'ratio')), '2.295');
    expect(door.verdict).toBe('pass');
  });

  test('vertical curve', () => {
    const edge = verticalCurve({
      start: { station: '0 m', elevation: '30 m' },
      before: '-2%',
      after: '-8%',
      length: '4 m',
    });
    expect(edge.elevationAt('2 m').to('m').toString()).toBe('29.93');
    expect(edge.middleOffset.to('mm').toString()).toBe('30');
    expect(edge.turningPoint).toBeNull();
  });

  test('long and cross slope together', () => {
    expectPrinted(percent(combineSlopes({ longSlope: '4%', crossSlope: '2%' }).steepest), '4.47');
  });
});
