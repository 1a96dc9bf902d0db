// What takes a result of the library takes nothing that only looks like one.
import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import {
  checkJob,
  describeMove,
  describeNextStep,
  describeStakeAction,
  describeWarning,
  materialList,
  planJob,
  renderCheckSheet,
  renderJobSheet,
  renderWorking,
} from 'settline/job';
import { length } from 'settline/units';
import { faultsOf } from '../faults.js';
import { cedarCourtJob } from '../cedar-court.js';

const plan = planJob(cedarCourtJob());
const readings = {
  readings: [{ stake: 'K1', surface: 'subgrade', belowString: '35 7/8 in' }],
  tolerances: { subgrade: { over: '0 in', under: '3/4 in' } },
} as const;
const check = checkJob(plan, readings);
const [surface] = check.surfaces;
const [stake] = surface?.stakes ?? [];
const [warning] = plan.warnings;
const move = { id: 'S4', distance: length('1 in'), direction: 'left' };
const US = { system: 'us' } as const;

type Call = (given: never, options: never) => unknown;
const cases: readonly (readonly [string, Call, object | undefined, object, string])[] = [
  ['checkJob', checkJob, plan, readings, 'PLAN_INVALID'],
  ['materialList', materialList, plan, {}, 'PLAN_INVALID'],
  ['renderJobSheet', renderJobSheet, plan, US, 'PLAN_INVALID'],
  ['renderCheckSheet', renderCheckSheet, check, US, 'WRONG_TYPE'],
  ['renderWorking', renderWorking, plan.working, US, 'WRONG_TYPE'],
  [
    'describeMove',
    describeMove,
    move,
    { system: 'us', facing: { from: 'S1', to: 'S5' } },
    'WRONG_TYPE',
  ],
  ['describeWarning', describeWarning, warning, US, 'WRONG_TYPE'],
  ['describeNextStep', describeNextStep, surface, US, 'WRONG_TYPE'],
  [
    'describeStakeAction',
    describeStakeAction,
    stake,
    { kind: 'subgrade', system: 'us' },
    'WRONG_TYPE',
  ],
];

const hollow: unknown[] = [];
hollow.length = 1_000_000;
const cyclic: Record<string, unknown> = {};
cyclic['self'] = cyclic;
const forged = { [Symbol.for('settline.quantity')]: true, dimension: 'length' };
const nothings: readonly unknown[] = [
  undefined,
  null,
  5,
  'x'.repeat(100_000),
  {},
  hollow,
  cyclic,
  JSON.parse(JSON.stringify(plan)),
  { ...plan },
  { id: 'S4', distance: forged, direction: 'left' },
  { code: 'FILL_NEEDED', subject: 'stake S4', values: { fill: forged } },
  { code: 'toString', subject: 'stake S4', values: {} },
  { next: { step: 'correct', stakes: hollow, surface: null, spread: null } },
  { next: { step: 'go-on', stakes: [], surface: 'base top', spread: forged } },
  { verdict: 'fail', value: forged, move: {}, looseToAdd: null },
  [{ title: 't', formula: 'f', given: hollow, result: {}, source: 'derived' }],
  [{ title: 't', formula: 'f', given: [], result: {}, source: 'nowhere' }],
];

describe.each(cases)('%s', (_name, call, valid, options, code) => {
  test('takes the result it is made for', () => {
    expect(call(valid as never, options as never)).toBeTruthy();
  });

  test('refuses everything else with one fault', () => {
    for (const given of nothings) {
      const faults = faultsOf(() => call(given as never, options as never));
      expect(faults.map((fault) => fault.code)).toEqual([code]);
      expect(faults[0]?.message.length).toBeLessThan(160);
    }
  });
});

test.each(cases.filter(([, , , options]) => 'system' in options))(
  '%s: a misspelt option is refused with the name that was meant',
  (_name, call, valid, options) => {
    const faults = faultsOf(() => call(valid as never, { ...options, sytem: 'us' } as never));
    expect(faults.map(({ code, params }) => [code, params['meant']])).toEqual([
      ['UNKNOWN_FIELD', 'system'],
    ]);
    expect(faultsOf(() => call(valid as never, undefined as never))[0]?.code).toBe('REQUIRED');
  },
);

test.each<[object, string]>([
  [{ uncertanty: '1/8 in' }, 'uncertanty UNKNOWN_FIELD uncertainty'],
  [{ tolerances: { subgrad: { over: 0, under: 0 } } }, 'tolerances.subgrad UNKNOWN_FIELD subgrade'],
  [
    { tolerances: { subgrade: { over: 0, undr: 0 } } },
    'tolerances.subgrade.undr UNKNOWN_FIELD under',
  ],
  [{ thickness: { bass: { over: 0, under: 0 } } }, 'thickness.bass UNKNOWN_FIELD base'],
  [{ thickness: { base: { over: 0, under: 0, ovr: 0 } } }, 'thickness.base.ovr UNKNOWN_FIELD over'],
  [
    { readings: [{ stake: 'K1', surface: 'subgrade', belowSting: '36 in' }] },
    'readings[0].belowSting UNKNOWN_FIELD belowString',
  ],
  [{ thickness: { base: 'irc-sp-63-2004' } }, 'thickness.base LIMIT_NOT_SET '],
  [{ tolerances: { subgrade: 'no such set' } }, 'tolerances.subgrade UNKNOWN_CHOICE '],
  [
    {
      readings: ['K1', 'K2'].map((id) => ({ stake: id, surface: 'subgrade', rod: '5 ft' })),
    },
    'instrumentHeight REQUIRED ',
  ],
])('checkJob refuses %j with one fault', (change, fault) => {
  const faults = faultsOf(() => checkJob(plan, { ...readings, ...change }));
  expect(
    faults.map(({ path, code, params }) => `${pathText(path)} ${code} ${params['meant'] ?? ''}`),
  ).toEqual([fault]);
});
