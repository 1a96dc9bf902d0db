import { describe } from 'vitest';
import {
  axleGroupLimit,
  checkAxleGroups,
  cuttingEdge,
  haulBalance,
  machineTime,
  plateTime,
  spoilLoads,
  spoilPile,
  wheelStressScreen,
} from 'settline/haul';
import { stateVolume } from 'settline/volumes';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const AXLES = [
  { id: 'steer', position: '0 ft', load: '14000 lb' },
  { id: 'drive', position: '14 ft', load: '18000 lb' },
];

const CASES: Readonly<Record<string, MisspeltCase>> = {
  axleGroupLimit: [
    axleGroupLimit,
    { axles: 3, spread: '18 ft' },
    [
      ['axels', 'axles'],
      ['spraed', 'spread'],
    ],
  ],
  checkAxleGroups: [
    checkAxleGroups,
    {
      axles: AXLES,
      caps: {
        single: '20000 lb',
        singleSpread: '40 in',
        tandem: '34000 lb',
        tandemSpread: '96 in',
        twoTandemsFrom: '36 ft',
        gross: '80000 lb',
      },
    },
    [
      ['axels', 'axles'],
      ['cap', 'caps'],
      ['axles[1].positon', 'position'],
      ['axles[0].laod', 'load'],
      ['caps.singel', 'single'],
      ['caps.tandemSpraed', 'tandemSpread'],
      ['caps.twoTandemFrom', 'twoTandemsFrom'],
      ['caps.gros', 'gross'],
    ],
  ],
  haulBalance: [
    haulBalance,
    {
      loadTime: '6 min',
      haulTime: '10 min',
      dumpTime: '3 min',
      returnTime: '8 min',
      truckLoad: '9 m3',
      trucks: [4],
    },
    [
      ['laodTime', 'loadTime'],
      ['haultime', 'haulTime'],
      ['dumpTimes', 'dumpTime'],
      ['returntime', 'returnTime'],
      ['truckload', 'truckLoad'],
      ['truck', 'trucks'],
    ],
  ],
  plateTime: [
    plateTime,
    {
      area: '72.4 m2',
      plateWidth: '0.5 m',
      overlap: 0.1,
      speed: '20 m/min',
      passes: 4,
      lifts: 3,
      efficiency: 1,
    },
    [
      ['platewidth', 'plateWidth'],
      ['overlaps', 'overlap'],
      ['passe', 'passes'],
      ['eficiency', 'efficiency'],
    ],
  ],
  wheelStressScreen: [
    wheelStressScreen,
    {
      wheelLoad: '8 kN',
      tyrePressure: '500 kPa',
      depth: '0.285 m',
      shearStrength: '40 kPa',
      geotextile: false,
    },
    [
      ['wheelload', 'wheelLoad'],
      ['tirePressure', 'tyrePressure'],
      ['geotextil', 'geotextile'],
    ],
  ],
  cuttingEdge: [
    cuttingEdge,
    {
      loadedRadius: {
        frontLeft: '380 mm',
        frontRight: '380 mm',
        rearLeft: '400 mm',
        rearRight: '400 mm',
      },
      fullRadius: '400 mm',
      wheelbase: '1 m',
      track: '1.2 m',
      reach: '0.85 m',
      edgeWidth: '1.8 m',
      wear: { left: '1 mm', right: '0 mm' },
    },
    [
      ['wheelBase', 'wheelbase'],
      ['loadedRadius.frontleft', 'frontLeft'],
      ['wear.rigth', 'right'],
      ['waer', 'wear'],
    ],
  ],
};

describe('a misspelt field is refused with the name that was meant', () => {
  testMisspelt(CASES);
});

const bank = stateVolume('42 m3', 'bank');
const loose = stateVolume('8 m3', 'loose');

describe('answers or refuses, whatever it gets', () => {
  testGarbage({
    ...CASES,
    spoilLoads: [
      spoilLoads,
      {
        bank,
        loosePerBank: 1.3,
        bankDryDensity: '1900 kg/m3',
        moisture: 0,
        boxVolume: '11 m3',
        payload: '13 t',
      },
    ],
    spoilPile: [
      spoilPile,
      { volume: loose, reposeAngle: '35 deg', ridgeWidth: '2 m', setBack: '2 ft', room: '9 m' },
    ],
    machineTime: [
      machineTime,
      {
        bank,
        loosePerBank: 1.3,
        bucket: '0.18 m3',
        fillFactor: 0.9,
        cycle: '22 s',
        efficiency: '50/60',
      },
    ],
  });
});

describe('a misspelt field beside a volume with its state', () => {
  // a state volume does not survive JSON, by which the table above spoils its cases
  testMisspelt({
    spoilLoads: [
      (options: Parameters<typeof spoilLoads>[0]) => spoilLoads({ ...options, bank }),
      { loosePerBank: 1.3, bankMoistDensity: '2 t/m3', boxVolume: '11 m3', payload: '13 t' },
      [
        ['loosePerbank', 'loosePerBank'],
        ['bankMoistDensty', 'bankMoistDensity'],
        ['boxvolume', 'boxVolume'],
        ['payLoad', 'payload'],
      ],
    ],
    spoilPile: [
      (options: Parameters<typeof spoilPile>[0]) => spoilPile({ ...options, volume: loose }),
      { reposeAngle: '35 deg', setBack: '2 ft', room: '9 m' },
      [
        ['reposeangle', 'reposeAngle'],
        ['setback', 'setBack'],
        ['rooms', 'room'],
      ],
    ],
    machineTime: [
      (options: Parameters<typeof machineTime>[0]) => machineTime({ ...options, bank }),
      { loosePerBank: 1.3, bucket: '0.18 m3', fillFactor: 0.9, cycle: '22 s', efficiency: 1 },
      [
        ['buckets', 'bucket'],
        ['fillfactor', 'fillFactor'],
        ['cylce', 'cycle'],
      ],
    ],
  });
});
