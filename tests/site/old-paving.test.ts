import { describe, expect, test } from 'vitest';
import { oldPaving } from 'settline/site';
import { testRefusals } from '../refusals.js';

describe('old paving', () => {
  test('two layers: asphalt over concrete, each a stream of its own', () => {
    const old = oldPaving({
      layers: [
        { material: 'asphalt', area: '27 ft2', thickness: '1 ft' },
        { material: 'concrete', area: '27 ft2', thickness: '2 ft' },
      ],
    });
    expect(old.layers.map(({ mass }) => mass.to('lb').toString())).toEqual(['4140', '8100']);
    expect(old.mass.to('lb').toString()).toBe('12240');
    expect(old.inPlace.to('yd3').toString()).toBe('3');
    expect(old.loose.to('yd3').toString()).toBe('5.1'); // 12240 / 2400
    expect(old.loose.state).toBe('loose');
    expect(old.thickness.to('ft').toString()).toBe('3');
    expect(old.saw).toBeNull();
    expect(old.notes.join(' ')).toContain('asphalt and concrete apart');
    expect(old.layers[0]?.sources).toEqual(['debris-training-sheet', 'state-debris-weights']);
    expect(old.working.map(({ source }) => source)).toEqual([
      'derived',
      'debris-training-sheet',
      'state-debris-weights',
      'derived',
      'debris-training-sheet',
      'state-debris-weights',
    ]);
  });

  test('given densities replace the published ones, and have no source', () => {
    const old = oldPaving({
      layers: [
        {
          material: 'asphalt',
          area: '48 m2',
          thickness: '0.09 m',
          inPlaceDensity: '2400 kg/m3',
          looseDensity: '1440 kg/m3',
        },
      ],
    });
    expect(old.mass.to('kg').toString()).toBe('10368');
    expect(old.loose.to('m3').toString()).toBe('7.2');
    expect(old.layers[0]?.sources).toEqual([]);
    expect(old.notes).toHaveLength(1);
  });

  test('a step cites the source of the density that it uses', () => {
    const layer = { material: 'asphalt', area: '48 m2', thickness: '0.09 m' } as const;
    const sourcesOf = (own: object) =>
      oldPaving({ layers: [{ ...layer, ...own }] }).working.map(({ source }) => source);
    expect(sourcesOf({ inPlaceDensity: '2400 kg/m3' })).toEqual([
      'derived',
      'derived',
      'state-debris-weights',
    ]);
    expect(sourcesOf({ looseDensity: '1440 kg/m3' })).toEqual([
      'derived',
      'debris-training-sheet',
      'derived',
    ]);
  });

  test('saw cuts: round the edge and a grid, n - 1 across and m - 1 along', () => {
    const old = oldPaving({
      layers: [{ material: 'concrete', area: '1 m2', thickness: '0.1 m' }],
      sawCuts: {
        runs: ['10 m', '2 m'],
        grid: { along: '10 m', across: '4 m', maximumPiece: '2 m' },
      },
    });
    // 5 by 2 pieces: 4 cuts of 4 m and 1 cut of 10 m
    expect(old.saw?.pieces).toBe(10);
    expect(old.saw?.grid.to('m').toString()).toBe('26');
    expect(old.saw?.length.to('m').toString()).toBe('38');
    expect(old.saw?.face.to('m2').toString()).toBe('3.8');
    expect(old.working.at(-1)?.title).toBe('Saw cuts');
  });

  test('a piece that just fits needs no further cut, a hair longer does', () => {
    const pieces = (along: string) =>
      oldPaving({
        layers: [{ material: 'concrete', area: '1 m2', thickness: '0.1 m' }],
        sawCuts: { grid: { along, across: '2 m', maximumPiece: '2 m' } },
      }).saw?.pieces;
    expect([pieces('4 m'), pieces('4.000001 m')]).toEqual([2, 3]);
  });

  testRefusals(
    oldPaving,
    {
      layers: [
        {
          material: 'brick',
          area: '10 m2',
          thickness: '60 mm',
          inPlaceDensity: '2 t/m3',
          looseDensity: '1 t/m3',
        },
      ],
      sawCuts: { runs: ['1 m'], grid: { along: '4 m', across: '4 m', maximumPiece: '1 m' } },
    },
    [
      ['layers', [], 'EMPTY_LIST'],
      ['layers', undefined, 'REQUIRED'],
      ['layers', new Array(11).fill({}), 'TOO_MANY'],
      ['layers.0', 5, 'WRONG_TYPE', 'layers[0]'],
      ['layers.0.material', '', 'EMPTY', 'layers[0].material'],
      ['layers.0.area', 81, 'UNIT_MISSING', 'layers[0].area'],
      ['layers.0.thickness', '0 in', 'NOT_POSITIVE', 'layers[0].thickness'],
      ['layers.0.inPlaceDensity', undefined, 'REQUIRED', 'layers[0].inPlaceDensity'],
      ['layers.0.looseDensity', undefined, 'REQUIRED', 'layers[0].looseDensity'],
      ['sawCuts.runs.0', '-1 m', 'NOT_POSITIVE', 'sawCuts.runs[0]'],
      ['sawCuts.grid.maximumPiece', undefined, 'REQUIRED'],
      ['sawCuts.grid.across', '0 m', 'NOT_POSITIVE'],
    ],
  );
});
