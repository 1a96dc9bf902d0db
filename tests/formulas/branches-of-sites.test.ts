import { expect, test } from 'vitest';
import {
  checkBondLine,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLevels,
  checkLippage,
  checkThickness,
} from 'settline/checks';
import {
  bentGrade,
  checkSlope,
  fallBetween,
  gradeBreak,
  levelChange,
  planeThrough,
  rampRun,
  requiredStakes,
} from 'settline/grading';
import { checkAxleGroups, spoilPile, wheelStressScreen } from 'settline/haul';
import { allowableMisclosure, errorBudget, reduceLevels, rodTilt } from 'settline/levelling';
import {
  checkStakeLine,
  checkStakeProfile,
  circleThrough,
  planDistance,
  pointByTapes,
  stakeOutliers,
} from 'settline/stakes';
import {
  designEsals,
  layerCoefficient,
  requiredStructuralNumber,
  serviceLife,
  structuralThickness,
} from 'settline/structure';
import { stateVolume } from 'settline/volumes';
import { faultOfStep } from './evaluate-step.js';
import { stepsIn } from './steps-in.js';

const TERMS = {
  reliability: 90,
  overallDeviation: '0.45',
  serviceabilityLoss: 2,
  resilientModulus: '30 MPa',
};
const heap = { volume: stateVolume('20 m3', 'loose'), reposeAngle: '33 deg', setBack: '1 m' };
const break_ = { before: '2%', after: '-9%' };
const vehicle = {
  wheelbase: '2.7 m',
  underside: '120 mm',
  overhang: '0.9 m',
  overhangHeight: '200 mm',
};
const path = ['0 m', '7 m', '7 m'].map((x, k) => ({ x, y: k === 2 ? '5 m' : '0 m' }));
const corners = [
  { x: '100 ft', y: '50 ft', z: '30.1 ft' },
  { x: '131 ft', y: '52 ft', z: '29.4 ft' },
  { x: '107 ft', y: '69 ft', z: '30 ft' },
  { x: '140 ft', y: '77 ft', z: '29.1 ft' },
];
const row = ['0 mm', '14 mm', '-3 mm', '2 mm', '1 mm'];
const inPlan = row.map((y, k) => ({ id: `K${k}`, x: `${3 * k} m`, y }));
const inProfile = row.map((elevation, k) => ({ id: `K${k}`, station: `${3 * k} m`, elevation }));
const bend = row.map((x, k) => ({ x, y: `${k} m` }));
const tapes = [
  { x: '0 m', y: '0 m', distance: '6 m' },
  { x: '7 m', y: '2 m', distance: '5 m' },
] as const;
const profile = row.map((height, k) => ({ station: `${k} m`, height }));
const joints = ['2 mm', '3 mm', '6 mm'].map((width, k) => ({ id: `${k}`, width }));
const lips = [{ id: 'a', lippage: '4 mm' }];
const fall = [{ id: 'a', fall: '75 mm', run: '3 m' }];
const book = { start: '30 m', rows: [{ point: 'BM', back: '1.4 m' }] };

test.each<readonly [name: string, run: () => unknown]>([
  ['traffic that stays', () => designEsals({ perDay: 40, years: 15 })],
  ['traffic that grows', () => designEsals({ perDay: 40, years: 15, growth: '0.03' })],
  ['life without growth', () => serviceLife({ esals: 1e6, firstYear: 5e4 })],
  ['life with growth', () => serviceLife({ esals: 1e6, firstYear: 5e4, growth: '0.04' })],
  ['life without end', () => serviceLife({ esals: 1e6, firstYear: 5e4, growth: '-0.1' })],
  ['stone of a sub-base', () => layerCoefficient({ layer: 'sub-base', modulus: '100 MPa' })],
  ['structure that is needed', () => requiredStructuralNumber({ ...TERMS, esals: 1e6 })],
  ['ground that carries it alone', () => requiredStructuralNumber({ ...TERMS, esals: 1 })],
  [
    'layers above that are enough',
    () => structuralThickness({ needed: 2, above: 3, coefficient: '0.1' }),
  ],
  ['cone', () => spoilPile(heap)],
  ['ridge', () => spoilPile({ ...heap, ridgeWidth: '2.5 m' })],
  [
    'axle groups',
    () =>
      checkAxleGroups({
        axles: ['0 ft', '12 ft', '16 ft'].map((position, k) => ({ id: `${k}`, position })),
        caps: 'us-interstate',
      }),
  ],
  [
    'wheel on a geotextile',
    () =>
      wheelStressScreen({
        wheelLoad: '20 kN',
        tyrePressure: '600 kPa',
        depth: '0.3 m',
        shearStrength: '30 kPa',
        geotextile: true,
      }),
  ],
  ['by set-ups', () => allowableMisclosure({ rule: { k: '3 mm', per: 'set-up' }, setUps: 5 })],
  [
    'by distance',
    () => allowableMisclosure({ rule: { k: '12 mm', per: '1 km' }, distance: '300 m' }),
  ],
  ['tilt', () => rodTilt({ reading: '2.1 m', tilt: '4 deg' })],
  ['lean', () => rodTilt({ reading: '2.1 m', lean: { by: '50 mm', over: '1.1 m' } })],
  [
    'book without a fall',
    () =>
      reduceLevels({
        ...book,
        rows: [...book.rows, { point: 'A', intermediate: '1.2 m' }],
      }),
  ],
  [
    'book without a rise',
    () =>
      reduceLevels({
        ...book,
        rows: [...book.rows, { point: 'A', fore: '1.7 m' }],
        known: '29.69 m',
      }),
  ],
  [
    'one random error, and a systematic one',
    () =>
      errorBudget({
        random: [{ name: 'rod', sigma: '1 mm' }],
        systematic: [{ name: 'beam', error: '-2 mm' }],
        tolerance: '9 mm',
      }),
  ],
  ['crest', () => gradeBreak({ ...break_, vehicle })],
  ['sag', () => gradeBreak({ before: '-9%', after: '2%', vehicle })],
  ['bevel', () => levelChange({ rise: '3/8 in' })],
  [
    'fall that is enough',
    () => fallBetween({ from: '30 m', to: '29 m', distance: '9 m', minimumFall: '2%' }),
  ],
  [
    'fall that is not',
    () => fallBetween({ from: '30 m', to: '29.9 m', distance: '9 m', minimumFall: '2%' }),
  ],
  ['both limits', () => checkSlope({ fall: '-4%', limits: { minimum: '1%', maximum: '3%' } })],
  [
    'ramp with landings',
    () =>
      rampRun({
        rise: '1 m',
        maximumSlope: '1:12',
        maximumRisePerFlight: '760 mm',
        landing: '1.5 m',
      }),
  ],
  ['ramp without', () => rampRun({ rise: '150 mm', maximumSlope: '1:20' })],
  ['open edge', () => requiredStakes({ path, spacing: '2 m' })],
  ['closed edge', () => requiredStakes({ path, closed: true, spacing: '2 m' })],
  [
    'bends of both sides',
    () =>
      bentGrade({
        levels: [
          { x: '0 m', y: '0 m', elevation: '30 m' },
          { x: '9 m', y: '0 m', elevation: '29.8 m' },
          { x: '14 m', y: '8 m', elevation: '29.7 m' },
          { x: '25 m', y: '7 m', elevation: '29.75 m' },
        ],
        halfWidth: '1 m',
      }),
  ],
  ['plane of three', () => planeThrough({ points: corners.slice(0, 3) })],
  [
    'level plane of three',
    () =>
      planeThrough({
        points: corners.slice(0, 3).map((corner) => ({ ...corner, z: '30 ft' })),
      }),
  ],
  ['plane of four', () => planeThrough({ points: corners })],
  ['stakes on the line of the ends', () => checkStakeLine({ stakes: inPlan, tolerance: '5 mm' })],
  [
    'stakes on their best line',
    () =>
      checkStakeLine({
        stakes: inPlan,
        tolerance: '5 mm',
        reference: 'best-fit',
      }),
  ],
  [
    'two stakes, best line',
    () =>
      checkStakeLine({
        stakes: inPlan.slice(0, 2),
        tolerance: '5 mm',
        reference: 'best-fit',
      }),
  ],
  [
    'marks on the grade of the ends',
    () =>
      checkStakeProfile({
        stakes: inProfile,
        tolerance: '5 mm',
        reference: 'ends',
      }),
  ],
  [
    'marks from the first',
    () =>
      checkStakeProfile({
        stakes: inProfile,
        tolerance: '5 mm',
        reference: 'first',
      }),
  ],
  [
    'marks on their best grade',
    () =>
      checkStakeProfile({
        stakes: inProfile,
        tolerance: '5 mm',
        reference: 'best-fit',
      }),
  ],
  ['outliers in profile', () => stakeOutliers({ stakes: inProfile })],
  [
    'the others in line',
    () =>
      stakeOutliers({
        stakes: inProfile.map((stake, k) => ({ ...stake, elevation: k === 2 ? '9 mm' : '0 mm' })),
      }),
  ],
  ['circle of three', () => circleThrough({ points: bend.slice(0, 3) })],
  ['circle of five', () => circleThrough({ points: bend })],
  [
    'circle of four exactly',
    () =>
      circleThrough({
        points: [
          { x: '0 m', y: '5 m' },
          { x: '3 m', y: '4 m' },
          { x: '4 m', y: '3 m' },
          { x: '5 m', y: '0 m' },
        ],
      }),
  ],
  ['taped on a rise', () => planDistance({ taped: '18 m', rise: '1.1 m' })],
  ['taped on a slope', () => planDistance({ taped: '18 m', slope: '7%' })],
  [
    'taped and hanging',
    () =>
      planDistance({
        taped: '30 m',
        hanging: { weightPerLength: '0.2 N/m', tension: '50 N', bays: 2 },
      }),
  ],
  ['tapes to the left', () => pointByTapes({ from: tapes, side: 'left' })],
  ['tapes to the right', () => pointByTapes({ from: tapes, side: 'right' })],
  [
    'lip below a maximum',
    () => checkLippage({ place: 'drain', readings: lips, tolerance: { maximum: '9 mm' } }),
  ],
  [
    'lip above a minimum',
    () => checkLippage({ place: 'drain', readings: lips, tolerance: { minimum: '3 mm' } }),
  ],
  [
    'lip between both',
    () =>
      checkLippage({
        place: 'drain',
        readings: lips,
        tolerance: { minimum: '3 mm', maximum: '9 mm' },
      }),
  ],
  [
    'joints above a minimum',
    () => checkJointWidth({ readings: joints, tolerance: { minimum: '3 mm' } }),
  ],
  [
    'joints below a maximum',
    () => checkJointWidth({ readings: joints, tolerance: { maximum: '3 mm' } }),
  ],
  [
    'joints between both, with a doubt',
    () =>
      checkJointWidth({
        readings: joints,
        tolerance: { minimum: '2 mm', maximum: '5 mm' },
        uncertainty: '0.5 mm',
      }),
  ],
  [
    'fall between limits',
    () =>
      checkFall({
        layer: 'pavers',
        readings: fall,
        tolerance: { minimum: '2%', maximum: '3%' },
        standardUncertainty: '1 mm',
      }),
  ],
  ['gap', () => checkFlatness({ profile, length: '3 m' })],
  [
    'gap that is judged',
    () => checkFlatness({ layer: 'base', profile, tolerance: 'paver-guide-mm' }),
  ],
  [
    'no gap',
    () =>
      checkFlatness({
        profile: profile.map((reading) => ({ ...reading, height: '0 mm' })),
        length: '3 m',
      }),
  ],
  [
    'bond line',
    () =>
      checkBondLine({
        readings: row.map((offset, k) => ({ station: `${2 * k} m`, offset })),
        tolerance: 'paver-guide-mm',
      }),
  ],
  [
    'level',
    () =>
      checkLevels({
        layer: 'base',
        readings: [{ id: 'A', plan: '29.8 m', measured: '29.81 m' }],
        tolerance: 'irc-sp-63-2004',
      }),
  ],
  [
    'average with limits of its own',
    () =>
      checkThickness({
        layer: 'base',
        design: '200 mm',
        readings: [{ id: 'a', thickness: '210 mm' }],
        tolerance: 'paver-guide-mm',
        averageTolerance: { over: '5 mm', under: '5 mm' },
      }),
  ],
])('%s: every formula gives its result', (_, run) => {
  const formulas = stepsIn(run()).flatMap((step) => (step.kind === 'formula' ? [step] : []));
  expect(formulas.length).toBeGreaterThan(0);
  expect(formulas.map((step) => [step.title, faultOfStep(step)])).toEqual(
    formulas.map(({ title }) => [title, null]),
  );
});
