import { describe, expect, test } from 'vitest';
import { planJob } from 'settline/job';
import { cornerTable, readPointTable, stakeTable, tableText } from 'settline/tables';
import { length, type Length, type LengthInput } from 'settline/units';
import { cedarCourtJob } from '../../cedar-court.js';
import { millGarthJob } from '../../mill-garth.js';
import { slateWharfJob } from '../../slate-wharf.js';
import { faultsOf } from '../../faults.js';

const plan = planJob(cedarCourtJob());

/** A length as a table gives it. */
function lengthOf(input: LengthInput): Length {
  const { value, unit } = input as { readonly value: string; readonly unit: 'm' };
  return length(value, unit);
}

describe('stakes as rows', () => {
  test('string by string, as the plan has them', () => {
    const rows = stakeTable(plan);
    const planned = plan.stringLines.flatMap(({ id, stakes }) =>
      stakes.map((stake) => [id, stake.id, stake.station, stake.offset, stake.finishElevation]),
    );
    expect(rows.map((row) => [row.string, row.id, row.station, row.offset, row.finish])).toEqual(
      planned,
    );
    expect(rows[0]?.x.to('ft').toString()).toBe('-1');
    expect(rows[0]?.y.to('ft').toString()).toBe('-3');
  });

  test('text, and back as stakes', () => {
    const rows = stakeTable(plan);
    const text = tableText(rows, { unit: 'ft' });
    expect(text.split('\r\n')[0]).toBe(
      'id,x [ft],y [ft],finish [ft],string,station [ft],offset [ft]',
    );
    const back = readPointTable(text, { kind: 'stakes' });
    expect(back.ids).toEqual(rows.map(({ id }) => id));
    back.rows.forEach(({ x }, index) => {
      expect(lengthOf(x).toNumber('ft')).toBeCloseTo(rows[index]?.x.toNumber('ft') ?? NaN, 4);
    });
  });

  test('only a plan is taken', () => {
    expect(faultsOf(() => stakeTable({ ...plan }))[0]?.code).toBe('PLAN_INVALID');
    expect(faultsOf(() => cornerTable({ ...plan }))[0]?.code).toBe('PLAN_INVALID');
  });
});

describe('corners as rows', () => {
  test.each([
    ['cedar court', cedarCourtJob()],
    ['mill garth', millGarthJob()],
    ['slate wharf', slateWharfJob()],
  ])('%s: each line of each pavement, and the text read back', (_, job) => {
    const one = planJob(job);
    const { rows } = cornerTable(one);
    for (const pavement of one.pavements) {
      const own = rows.filter((row) => row.pavement === pavement.id);
      const of = (line: string) => own.filter((row) => row.line === line);
      const rings = [pavement.digOutline, ...pavement.digHoles.map(({ points }) => points)].flat();
      expect(of('dig').map(({ x, y }) => [x, y])).toEqual(rings.map(({ x, y }) => [x, y]));
      expect(of('paving')).toHaveLength(pavement.edges.length);
      expect(of('base').length).toBeGreaterThan(2);
      expect(of('dig-top').length > 0).toBe(pavement.top !== null);
    }
    for (const options of [
      { unit: 'm' },
      { unit: 'mm', delimiter: ';', decimalMark: ',' },
      { unit: 'in', delimiter: '\t' },
    ] as const) {
      const text = tableText(rows, options);
      const columns = { id: 'corner' };
      const { decimalMark } = { decimalMark: '.' as const, ...options };
      const back = readPointTable(text, { kind: 'stakes', columns, decimalMark });
      expect(back.ids).toEqual(rows.map(({ corner }) => corner));
      back.rows.forEach((row, index) => {
        const want = rows[index];
        for (const axis of ['x', 'y'] as const) {
          const got = lengthOf(row[axis]);
          expect(got.toNumber('mm')).toBeCloseTo(want?.[axis].toNumber('mm') ?? NaN, 0);
          expect(
            got
              .minus(want?.[axis] ?? got)
              .abs()
              .toNumber('mm'),
          ).toBeLessThan(0.0501);
        }
      });
    }
  });

  test('offsets from two given points, by pencil', () => {
    // a 3, 4, 5 line: along = (3 x + 4 y) / 5, left = (3 y - 4 x) / 5
    const fixed = [
      { name: 'hydrant', x: '0 m', y: '0 m' },
      { x: '3 m', y: '4 m' },
    ];
    const table = cornerTable(plan, { fixed });
    expect(table.fixed.map(({ name }) => name)).toEqual(['hydrant', 'Q']);
    for (const { x, y, along, left } of table.rows) {
      const [east, north] = [x.toNumber('m'), y.toNumber('m')];
      expect(along.toNumber('m')).toBeCloseTo((3 * east + 4 * north) / 5, 10);
      expect(left.toNumber('m')).toBeCloseTo((3 * north - 4 * east) / 5, 10);
    }
  });

  test('letters run on over the holes, and after Z comes AA', () => {
    const job = cedarCourtJob();
    const [first] = job.pavements;
    const many = Array.from({ length: 28 }, (_, k): [number, number] => [
      Number((60 * Math.cos((k / 14) * Math.PI)).toFixed(3)),
      Number((60 * Math.sin((k / 14) * Math.PI)).toFixed(3)),
    ]);
    const pavement: Record<string, unknown> = {
      ...first,
      outline: { unit: 'ft', points: many },
    };
    delete pavement['edges'];
    delete pavement['border'];
    const round = planJob({
      ...job,
      pavements: [pavement],
      stringLines: job.stringLines.filter((line) => line.pavement === first?.id),
    } as never);
    const paving = cornerTable(round).rows.filter(({ line }) => line === 'paving');
    expect(paving.map(({ corner }) => corner).slice(24)).toEqual(['Y', 'Z', 'AA', 'AB']);
  });

  test.each([
    ['one place', [{ x: '1 m', y: '1 m' }], 'TOO_FEW', ['fixed']],
    [
      'two at one spot',
      [
        { x: '1 m', y: '1 m' },
        { x: '100 cm', y: '1 m' },
      ],
      'POINTS_COINCIDE',
      ['fixed'],
    ],
    [
      'no unit',
      [
        { x: 1, y: '1 m' },
        { x: '3 m', y: '1 m' },
      ],
      'UNIT_MISSING',
      ['fixed', 0, 'x'],
    ],
  ])('%s is refused', (_, fixed, code, path) => {
    const options = { fixed } as never;
    expect(faultsOf(() => cornerTable(plan, options))[0]).toMatchObject({ code, path });
  });
});

describe('rows as text', () => {
  test('text is quoted where it must be, lengths are rounded half up, null is empty', () => {
    const rows = [{ id: 'a "b", c', x: length('1.00005 m'), n: 2.5, z: null }];
    expect(tableText(rows)).toBe('id,x [m],n,z\r\n"a ""b"", c",1.0001,2.5,');
    expect(tableText(rows, { unit: 'mm', delimiter: ';', decimalMark: ',' })).toBe(
      'id;x [mm];n;z\r\n"a ""b"", c";1000,1;2,5;',
    );
  });

  test('what looks like a formula is text to a spreadsheet, and comes back as it was', () => {
    const rows = [{ id: '=1+1', x: length('-1 m'), y: length('0 m') }];
    const text = tableText(rows);
    expect(text).toBe(`id,x [m],y [m]\r\n'=1+1,-1.0000,0.0000`);
    expect(readPointTable(text, { kind: 'stakes' }).ids).toEqual(['=1+1']);
  });

  test.each([
    ['no rows', [], {}, 'EMPTY_LIST'],
    ['other fields', [{ a: 1 }, { b: 1 }], {}, 'COUNT_MISMATCH'],
    ['a date', [{ a: new Date(0) }], {}, 'WRONG_TYPE'],
    ['no number', [{ a: NaN }], {}, 'NOT_FINITE'],
    ['commas twice', [{ a: 1 }], { decimalMark: ',' }, 'CONFLICTING_FIELDS'],
  ])('%s is refused', (_, rows, options, code) => {
    expect(faultsOf(() => tableText(rows, options as never))[0]?.code).toBe(code);
  });
});
