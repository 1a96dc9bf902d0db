import { describe, expect, test } from 'vitest';
import { checkJob, planJob, renderHandOver, type JobCheck, type JobReadings } from 'settline/job';
import { faultsOf } from '../faults.js';
import { cedarCourtFile, cedarCourtJob } from '../cedar-court.js';
import { planFile } from '../plan-file.js';

const plan = planJob(cedarCourtJob());

/** String kerb is 18 in above finished grade, string fence 24 in. */
const COURT = ['K1', 'K2', 'K3', 'K4', 'K5', 'F1', 'F2', 'F3'];
const bases = COURT.map((stake) => ({
  stake,
  surface: 'base top',
  belowString: stake.startsWith('F') ? '28 1/4 in' : '22 1/4 in',
}));
const GATE = { pavement: 'court', place: 'by the gate' };
const joints = (width: string) =>
  ({
    ...GATE,
    readings: [
      { id: 'a', width: '1/8 in' },
      { id: 'b', width },
    ],
    tolerance: 'paver-guide-in',
  }) as const;
const sound: JobReadings = {
  readings: bases,
  tolerances: { base: { over: '3/8 in', under: '3/8 in' } },
  jointWidth: [joints('1/8 in')],
};
const broken: JobReadings = {
  readings: [
    ...bases.slice(0, 6),
    { stake: 'F2', surface: 'base top', belowString: '28 7/8 in' },
    { stake: 'K1', surface: 'subgrade', belowString: '36 3/4 in' },
    { stake: 'K1', surface: 'sub-base top', belowString: '30 1/4 in' },
  ],
  tolerances: {
    base: { over: '3/8 in', under: '3/8 in' },
    'sub-base': { over: '1/2 in', under: '1/2 in' },
    subgrade: { over: '1/2 in', under: '1/2 in' },
  },
  thickness: { base: 'paver-guide-in', 'sub-base': { over: '1/4 in', under: '1/4 in' } },
  compaction: [
    {
      ...GATE,
      surface: 'base top',
      readings: [{ id: 'c', wetDensity: '2.04 t/m3', moisture: 0.05 }],
      maximumDryDensity: '2 t/m3',
      test: 'standard',
      tolerance: 'paver-guide-mm',
    },
  ],
  fall: [
    {
      ...GATE,
      surface: 'finished grade',
      readings: [{ id: 'd', fall: '1 in', run: '60 in' }],
      tolerance: { minimum: '2%' },
    },
  ],
  lippage: [
    {
      ...GATE,
      at: 'drain',
      readings: [{ id: 'e', lippage: '-1/8 in' }],
      tolerance: 'paver-guide-in',
    },
  ],
  jointWidth: [joints('5/16 in')],
};
const sheetOf = (readings: JobReadings, system: 'us' | 'metric' = 'us', width = 90) =>
  renderHandOver(checkJob(plan, readings), { system, width });

/** The lines under a heading. */
function section(sheet: string, title: string): string[] {
  const lines = sheet.split('\n');
  const start = lines.indexOf(title);
  if (start < 0) expect.unreachable(`no section ${title}`);
  const end = lines.findIndex((line, index) => index > start && /^[A-Z, ]{6,}$/.test(line));
  return lines.slice(start + 2, end < 0 ? undefined : end - 1);
}

test('the parts come in their order', () => {
  const titles = sheetOf(broken)
    .split('\n')
    .filter((line) => /^[A-Z, ]{6,}$/.test(line));
  expect(titles).toEqual([
    'WHAT WAS BUILT, AS PLANNED',
    'WHAT WAS MEASURED',
    'WHAT DEVIATES',
    'WHAT WAS NOT CHECKED',
    'CARE OF THE SURFACE',
    'CAUTIONS',
    'SIGNED',
  ]);
});

describe('what was built', () => {
  test('names use and ground, every layer, and the area', () => {
    const lines = section(sheetOf(sound), 'WHAT WAS BUILT, AS PLANNED');
    expect(lines[0]).toBe('Parking court. Parking or residential street, well-drained subgrade');
    const cells = lines.map((line) => line.trim().split(/ {2,}/));
    expect(cells).toEqual(
      expect.arrayContaining([
        ['paver', '3 1/4'],
        ['base, stone', '8 1/2'],
        ['sub-base, stone', '6'],
        ['all layers', '18 3/4'],
        ['base, stone', '5'],
        ['all layers', '9 1/4'],
      ]),
    );
    expect(lines.join('\n')).toMatch(/area of paving +1270\.0 sq ft/);
  });

  test('in millimetres', () => {
    const sheet = sheetOf(sound, 'metric');
    expect(sheet).toMatch(/all layers +476/);
    expect(section(sheet, 'WHAT WAS BUILT, AS PLANNED').join(' ')).not.toMatch(/\d (in|sq ft)\b/);
  });
});

describe('what was measured', () => {
  const lines = section(sheetOf(broken), 'WHAT WAS MEASURED');

  test('each check has its verdict, its readings, the worst, the tolerance and its source', () => {
    const at = lines.indexOf('- Thickness, sub-base: OUT');
    // 36 3/4 less 30 1/4 in: 6 1/2 in of 6 in, 1/4 in allowed
    expect(lines.slice(at, at + 3)).toEqual([
      '- Thickness, sub-base: OUT',
      '  1 reading, 1 out of tolerance; worst: K1, 6 1/2 in',
      '  tolerance: 5 3/4 in to 6 1/4 in, set for this job',
    ]);
    const joint = lines.indexOf('- Joint width, finished grade, by the gate: OUT');
    expect(lines.slice(joint + 1, joint + 3)).toEqual([
      '  2 readings, 1 out of tolerance; worst: b, 5/16 in',
      '  tolerance: 1/16 in to 3/16 in [1]',
    ]);
    expect(lines.at(-2)).toMatch(/^\[1\] Construction Tolerances and Recommendations/);
  });

  test('checks go from the ground up, at the stakes and then between them', () => {
    expect(lines.filter((line) => line.startsWith('- '))).toEqual([
      '- Level, subgrade: ok',
      '- Level, sub-base top: ok',
      '- Thickness, sub-base: OUT',
      '- Level, base top: OUT',
      // 30 1/4 less 22 1/4 in: 8 in of 8 1/2, and the guide lets 1/2 in under pass
      '- Thickness, base: ok',
      '- Compaction, base, by the gate: OUT',
      '- Fall, finished grade, by the gate: OUT',
      '- Lippage at a drain, finished grade, by the gate: OUT',
      '- Joint width, finished grade, by the gate: OUT',
    ]);
  });

  test('a reading too close to the limit is neither ok nor out', () => {
    const unsure = { ...sound, uncertainty: '1/2 in' };
    const sheet = sheetOf(unsure);
    expect(sheet).toContain('- Level, base top: CHECK');
    expect(sheet).toContain('8 readings, 8 too close to tell');
    expect(sheet).toContain('K1, 0 in: take more readings, then check again');
  });
});

describe('what deviates', () => {
  const lines = section(sheetOf(broken), 'WHAT DEVIATES');

  test('each deviation has its figure, its correction and who decides', () => {
    expect(lines.slice(0, -3)).toEqual([
      '! Parking court, thickness, sub-base: OUT',
      '  K1, 6 1/2 in: cut 1/2 in',
      '  average, 6 1/2 in: cut 1/2 in',
      "  Decides: the owner's engineer",
      '! Parking court, level, base top: OUT',
      '  F2, 5/8 in low: loosen the top, spread 13/16 in of loose stone and compact',
      "  Decides: the owner's engineer",
      '! Parking court, compaction, base, by the gate: OUT',
      '  c, 97.1%: compact again',
      "  Decides: the owner's engineer",
      '! Parking court, fall, finished grade, by the gate: OUT',
      '  d, 1.7%: lower 3/16 in',
      "  Decides: the owner's engineer, within the local code",
      '! Parking court, lippage at a drain, finished grade, by the gate: OUT',
      '  e, -1/8 in: raise 1/4 in',
      '  Decides: the owner, within the local code',
      '! Parking court, joint width, finished grade, by the gate: OUT',
      '  b, 5/16 in: close up 1/8 in',
      '  Decides: the owner',
    ]);
    expect(lines.join(' ')).toContain('common practice, no source');
  });

  test('is said to be nothing where all passes, and no count is printed', () => {
    const sheet = sheetOf(sound);
    expect(section(sheet, 'WHAT DEVIATES')).toEqual([
      'Nothing that was measured is out of tolerance.',
    ]);
    expect(sheet.split('\n')[2]).toBe(
      'Hand-over. All checks: ok so far. Not everything has been checked.',
    );
    expect(sheetOf(broken).split('\n')[2]).toBe(
      'Hand-over. All checks: OUT, 6 of 9 checks deviate',
    );
    expect(sheetOf({ jointWidth: [joints('5/16 in')] }).split('\n')[2]).toBe(
      'Hand-over. All checks: OUT, 1 of 1 check deviates',
    );
    expect(sheetOf({ ...sound, jointWidth: [joints('5/16 in')] }).split('\n')[2]).toBe(
      'Hand-over. All checks: OUT, 1 of 2 checks deviates',
    );
    expect(section(sheet, 'SIGNED').join(' ')).toContain('It does not approve any deviation.');
  });

  test('joints within the share that was asked for are no deviation', () => {
    const enough = { jointWidth: [{ ...joints('5/16 in'), minimumShare: 0.5 }] };
    const sheet = sheetOf(enough);
    expect(section(sheet, 'WHAT DEVIATES')).toHaveLength(1);
    expect(sheet).toContain('2 readings, 1 out of tolerance');
  });

  test('a flatness that proves nothing is a deviation with its reason', () => {
    const profile = [
      { station: '0 ft', height: '0 in' },
      { station: '1 ft', height: '0 in' },
      { station: '9 ft', height: '0 in' },
      { station: '30 ft', height: '0 in' },
    ];
    const flatness = [
      { ...GATE, surface: 'finished grade', profile, tolerance: 'paver-guide-in' } as const,
    ];
    const found = section(sheetOf({ flatness }), 'WHAT DEVIATES');
    expect(found[0]).toBe('! Parking court, flatness, finished grade, by the gate: CHECK');
    expect(found[1]).toMatch(/fewer than three readings/);
  });
});

test("the level of the finished paving is the engineer's, how it looks the owner's", () => {
  const sheet = sheetOf({
    readings: [{ stake: 'K1', surface: 'finished grade', belowString: '17 in' }],
    tolerances: { pavers: { over: '3/8 in', under: '3/8 in' } },
    lippage: [
      {
        ...GATE,
        at: 'pavers',
        readings: [{ id: 'a', lippage: '1 in' }],
        tolerance: 'paver-guide-in',
      },
    ],
  });
  const lines = section(sheet, 'WHAT DEVIATES');
  expect(lines.filter((line) => line.includes('Decides'))).toEqual([
    "  Decides: the owner's engineer",
    '  Decides: the owner',
  ]);
});

describe('what was not checked', () => {
  test('names stakes, surfaces and kinds of check', () => {
    expect(section(sheetOf(broken), 'WHAT WAS NOT CHECKED')).toEqual([
      'Parking court:',
      '- Level, subgrade: not at K2, K3, K4, K5, F1, F2, F3',
      '- Level, sub-base top: not at K2, K3, K4, K5, F1, F2, F3',
      '- Level, base top: not at F3',
      '- Level: lift 1 top, lift 3 top, bedding top, finished grade',
      '- Thickness: bedding',
      '- Compaction: subgrade, sub-base',
      '- Flatness: base top, finished grade',
      '- Bond line: finished grade',
      'Terrace:',
      '- nothing was checked',
    ]);
    expect(sheetOf(broken)).toContain('Terrace: nothing was measured.');
  });
});

test('pavements of one name are kept apart', () => {
  const file = cedarCourtFile();
  for (const pavement of file.pavements) pavement['name'] = 'Yard';
  const check = checkJob(planFile(file), {
    readings: [{ stake: 'G1', surface: 'subgrade', belowString: '18 1/4 in' }],
    tolerances: { subgrade: { over: '1/2 in', under: '1/2 in' } },
  });
  const sheet = renderHandOver(check, { system: 'us' });
  expect(sheet.match(/Level, subgrade: ok/g)).toHaveLength(1);
  expect(sheet.match(/not at G2, G3/g)).toHaveLength(1);
  expect(sheet.match(/Yard: nothing was measured/g)).toHaveLength(1);
});

test('care follows what the pavement was planned for, and cites nobody', () => {
  const care = section(sheetOf(sound), 'CARE OF THE SURFACE').join(' ').replace(/ +/g, ' ');
  expect(care).toContain('Terrace: It was planned for walking. Keep vehicles off it.');
  expect(care).toContain("Ask the owner's engineer before heavier traffic uses it.");
  expect(care).toContain('Top up the joint sand after the first weeks of use');
  expect(care).toContain('Common practice, no source.');
});

test('every caution of the check, and a line for each signature', () => {
  const check = checkJob(plan, broken);
  const sheet = renderHandOver(check, { system: 'us', width: 120 });
  const flat = sheet.replace(/\s+/g, ' ');
  for (const { text } of check.cautions) expect(flat).toContain(text);
  expect(check.cautions.map(({ id }) => id)).toContain('access');
  expect(
    section(sheet, 'SIGNED').filter((line) => /^For the .* _+ date _+$/.test(line)),
  ).toHaveLength(2);
});

test('fits its width', () => {
  for (const system of ['us', 'metric'] as const) {
    for (const width of [40, 48, 63, 120]) {
      const sheet = sheetOf(broken, system, width);
      for (const line of sheet.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
      expect(sheet).not.toMatch(/undefined|NaN|null/);
    }
  }
});

test.each<[string, unknown, object, string]>([
  ['a plan', plan, { system: 'us' }, 'WRONG_TYPE'],
  ['a copy', { ...checkJob(plan, sound) }, { system: 'us' }, 'WRONG_TYPE'],
  ['nothing', undefined, { system: 'us' }, 'WRONG_TYPE'],
  ['another system', checkJob(plan, sound), { system: 'si' }, 'UNKNOWN_CHOICE'],
  ['a narrow sheet', checkJob(plan, sound), { system: 'us', width: 20 }, 'OUT_OF_RANGE'],
  ['another option', checkJob(plan, sound), { system: 'us', wide: 60 }, 'UNKNOWN_FIELD'],
])('refuses %s', (_name, check, options, code) => {
  const faults = faultsOf(() => renderHandOver(check as JobCheck, options as { system: 'us' }));
  expect(faults.map((one) => one.code)).toEqual([code]);
});
