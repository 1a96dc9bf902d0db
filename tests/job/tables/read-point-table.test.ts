import { describe, expect, test } from 'vitest';
import { checkJob, planJob } from 'settline/job';
import { readPointTable } from 'settline/tables';
import { siteVolumes } from 'settline/volumes';
import { cedarCourtJob } from '../../cedar-court.js';
import { faultsOf } from '../../faults.js';

const spots = (table: string, options: object = {}) =>
  readPointTable(table, { kind: 'spot-heights', ...options });
const m = (value: string) => ({ value, unit: 'm' });

describe('what stands between cells and before decimals', () => {
  test('commas and points', () => {
    const read = spots('id,x [m],y [m],z [m]\nA,1.5,2,100.25\nB,3,4,99.9\n');
    expect(read.rows).toEqual([
      { x: m('1.5'), y: m('2'), z: m('100.25') },
      { x: m('3'), y: m('4'), z: m('99.9') },
    ]);
    expect(read.ids).toEqual(['A', 'B']);
    expect([read.delimiter, read.decimalMark]).toEqual([',', '.']);
  });

  test('semicolons and decimal commas; tabs; a byte order mark', () => {
    const read = spots('\uFEFFx (m);y (m);z (m)\r\n1,5;2,25;-3,125\r\n');
    expect(read.rows).toEqual([{ x: m('1.5'), y: m('2.25'), z: m('-3.125') }]);
    expect([read.delimiter, read.decimalMark]).toEqual([';', ',']);
    expect(spots('x [ft]\ty [ft]\tz [ft]\n1.5\t2\t3').delimiter).toBe('\t');
  });

  test('quoted cells: a delimiter, a quotation mark and a line break in them', () => {
    const read = spots('id,x [m],y [m],z [m]\n"gate, left ""post""\nby the wall",1,2,3\nB,4,5,6');
    expect(read.ids).toEqual(['gate, left "post"\nby the wall', 'B']);
    expect(read.rows[1]?.x).toEqual(m('4'));
  });

  test.each([
    ['nothing between columns', 'x [m] y [m] z [m]\n1 2 3', 'delimiter', 'neither commas'],
    ['two delimiters', 'id, name;x [m];y [m];z [m]\n1;2;3;4', 'delimiter', 'semicolons and commas'],
    ['thousands or decimals', 'x [m];y [m];z [m]\n1,234;2,345;3,456', 'decimalMark', 'thousands'],
    ['both marks', 'x [m];y [m];z [m]\n1,5;2.5;3', 'decimalMark', 'decimal point'],
    ['a quotation mark that does not close', 'id,x [m],y [m],z [m]\n"A,1,2,3', 'text', 'row 2'],
  ])('%s is refused', (_, table, field, words) => {
    const [first] = faultsOf(() => spots(table));
    expect(first).toMatchObject({ code: 'TABLE_UNCLEAR', path: [field] });
    expect(first?.message).toContain(words);
  });

  test('options settle what is open', () => {
    const table = 'x [m];y [m];z [m]\n1,234;2,345;3,456';
    expect(spots(table, { decimalMark: ',' }).rows[0]?.x).toEqual(m('1.234'));
    const [first] = faultsOf(() => spots(table, { decimalMark: '.' }));
    expect(first).toMatchObject({ code: 'TABLE_UNCLEAR', path: ['rows', 0, 'x'] });
    expect(spots('a;b,x [m],y [m],z [m]\n1,2,3,4', { delimiter: ',' }).ignored).toEqual(['a;b']);
  });
});

describe('columns are named, never guessed', () => {
  test('northing before easting, in any case and with extra columns', () => {
    const read = spots('Point,NORTHING [m],Easting [m],Elev. [m],code\n1,20,10,5,tree');
    expect(read.rows).toEqual([{ x: m('10'), y: m('20'), z: m('5') }]);
    expect(read.ignored).toEqual(['code']);
    expect(read.columns.map(({ column, header }) => [column, header])).toEqual([
      ['id', 'Point'],
      ['x', 'Easting [m]'],
      ['y', 'NORTHING [m]'],
      ['z', 'Elev. [m]'],
    ]);
  });

  test('headers in another language, by the option', () => {
    const columns = { x: 'Rechts', y: 'Hoch [m]', z: 'Höhe' };
    const read = spots('Hoch [m];Rechts;Höhe\n1;2;3', { columns, unit: 'm' });
    expect(read.rows).toEqual([{ x: m('2'), y: m('1'), z: m('3') }]);
  });

  test.each([
    ['no header', '1,2,3\n4,5,6', 'TABLE_UNCLEAR', ['columns']],
    ['no y', 'x [m],z [m]\n1,2', 'REQUIRED', ['columns', 'y']],
    ['x twice', 'x [m],easting [m],y [m],z [m]\n1,2,3,4', 'TABLE_UNCLEAR', ['columns', 'x']],
    ['a unit that is none', 'x [mtr],y [m],z [m]\n1,2,3', 'UNIT_UNKNOWN', ['columns', 'x']],
  ])('%s is refused', (_, table, code, path) => {
    expect(faultsOf(() => spots(table))[0]).toMatchObject({ code, path });
  });

  test('a header that the option names and the table has not', () => {
    const table = 'x [m],y [m],z [m]\n1,2,3';
    const [first] = faultsOf(() => spots(table, { columns: { z: 'height' } }));
    expect(first).toMatchObject({ code: 'UNKNOWN_ID', path: ['columns', 'z'] });
  });

  test('an elevation at a stake: of what must be said', () => {
    const table = 'id,x [m],y [m],elevation [m]\nS1,1,2,3';
    const [first] = faultsOf(() => readPointTable(table, { kind: 'stakes' }));
    expect(first).toMatchObject({ code: 'TABLE_UNCLEAR', path: ['columns', 'finish'] });
    const columns = { finish: 'elevation' };
    expect(readPointTable(table, { kind: 'stakes', columns }).rows).toEqual([
      { id: 'S1', x: m('1'), y: m('2'), finish: m('3') },
    ]);
  });
});

describe('faults name row and column', () => {
  test('all at once, the header counted as row 1, empty rows too', () => {
    const table = 'id,x [m],y [m],z [m]\nA,1,2,3\n\nB,one,,4\nC,5,6,7,8\nD,1,2,99999999';
    const faults = faultsOf(() => spots(table));
    expect(faults.map(({ code, path }) => [code, path])).toEqual([
      ['NOT_A_NUMBER', ['rows', 1, 'x']],
      ['REQUIRED', ['rows', 1, 'y']],
      ['COUNT_MISMATCH', ['rows', 2]],
      ['OUT_OF_RANGE', ['rows', 3, 'z']],
    ]);
    expect(faults[0]?.message).toContain('row 4, column "x [m]": ');
    expect(faults[0]?.params).toMatchObject({ row: 4 });
    expect(faults[2]?.message).toBe('row 5 has 5 cells, the header has 4');
  });

  test('no unit anywhere', () => {
    const faults = faultsOf(() => spots('x,y [m],z [m]\n1,2,3'));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ code: 'UNIT_MISSING', path: ['rows', 0, 'x'] });
  });

  test('the option gives the unit that headers leave out, and a cell may have its own', () => {
    const read = spots(`x,y [m],z\n1,2,"7' 3 5/8"""`, { unit: 'ft' });
    expect(read.rows).toEqual([{ x: { value: '1', unit: 'ft' }, y: m('2'), z: `7' 3 5/8"` }]);
    const comma = spots('x [m];y [m];z\n1,5;2;3,25 m');
    expect(comma.rows[0]?.z).toEqual(m('3.25'));
  });

  test('an empty table, a header alone, no text', () => {
    expect(faultsOf(() => spots('  '))[0]?.code).toBe('EMPTY');
    expect(faultsOf(() => spots('x [m],y [m],z [m]\n'))[0]?.code).toBe('EMPTY_LIST');
    expect(faultsOf(() => readPointTable(5 as never, { kind: 'stakes' }))[0]?.code).toBe(
      'WRONG_TYPE',
    );
  });
});

describe('rows go straight into a job', () => {
  test('spot heights into a site', () => {
    const { rows } = spots('x [m],y [m],z [m]\n0,0,1\n4,0,1\n4,4,1\n0,4,1');
    const design = { z0: '0.5 m', gradeX: '0%', gradeY: '0%' };
    expect(siteVolumes({ existing: rows, design }).cut.to('m3').toString()).toBe('8');
  });

  test('stakes and spot heights of a job', () => {
    const job = cedarCourtJob();
    const table = ['id;finish [ft];x [ft];y [ft];ground'];
    const inFeet = (value: unknown) => JSON.stringify(value);
    const before = planJob(job);
    for (const { id, x, y, finish, ground } of before.job.stakes) {
      expect(inFeet(x)).toContain('"unit"');
      const cell = (value: unknown) => value as { value: string; unit: string } | undefined;
      const text = (value: unknown) => {
        const one = cell(value);
        return one === undefined ? '' : `${one.value} ${one.unit}`;
      };
      table.push([id, text(finish), text(x), text(y), text(ground)].join(';'));
    }
    const { rows } = readPointTable(table.join('\n'), { kind: 'stakes' });
    const stakes = rows.map((row, index) => ({ ...before.job.stakes[index], ...row }));
    expect(planJob({ ...job, stakes }).totals).toEqual(before.totals);
  });

  test('readings of checkJob', () => {
    const table = 'stake,surface,below string [in]\nK1,finished grade,18\n"K2","subgrade",36.75';
    const { rows, ids } = readPointTable(table, { kind: 'readings' });
    expect(ids).toEqual(['K1', 'K2']);
    const band = { over: '1/2 in', under: '1/2 in' };
    const tolerances = { pavers: band, subgrade: band };
    const check = checkJob(planJob(cedarCourtJob()), { readings: rows, tolerances });
    expect(JSON.stringify(check)).toContain('K2');
  });
});
