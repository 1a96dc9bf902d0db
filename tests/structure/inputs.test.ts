import { describe } from 'vitest';
import {
  allowableEsals,
  designEsals,
  layerCoefficient,
  modulusFromCbr,
  requiredModulus,
  requiredStructuralNumber,
  serviceLife,
  structuralNumber,
  structuralThickness,
} from 'settline/structure';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const terms = { reliability: 80, overallDeviation: '0.45', serviceabilityLoss: 2 } as const;
const layers = [
  { name: 'asphalt', thickness: '3 in', coefficient: '0.44' },
  { name: 'base', thickness: '8 in', coefficient: '0.14', drainage: '0.9' },
];
const axles = [{ name: 'delivery truck', perDay: 14, factor: '0.9' }];

const cases: Readonly<Record<string, MisspeltCase>> = {
  allowableEsals: [
    allowableEsals,
    { ...terms, structuralNumber: 3, resilientModulus: '5000 psi' },
    [
      ['structralNumber', 'structuralNumber'],
      ['reliabilty', 'reliability'],
      ['standardNormalDeviat', 'standardNormalDeviate'],
    ],
  ],
  requiredStructuralNumber: [
    requiredStructuralNumber,
    { ...terms, esals: 1e6, resilientModulus: '5000 psi' },
    [
      ['esal', 'esals'],
      ['resilientModulos', 'resilientModulus'],
    ],
  ],
  requiredModulus: [
    requiredModulus,
    { ...terms, esals: 1e6, structuralNumber: 3 },
    [['overalDeviation', 'overallDeviation']],
  ],
  designEsals: [
    designEsals,
    { axles, years: 20, growth: 0.02 },
    [
      ['growht', 'growth'],
      ['year', 'years'],
      ['axle', 'axles'],
      ['axles[0].factors', 'factor'],
      ['axles[0].perday', 'perDay'],
    ],
  ],
  serviceLife: [
    serviceLife,
    { esals: 1e6, firstYear: 5e4, growth: '0.03' },
    [
      ['growht', 'growth'],
      ['firstyear', 'firstYear'],
    ],
  ],
  structuralNumber: [
    structuralNumber,
    { layers },
    [
      ['layer', 'layers'],
      ['layers[1].drainge', 'drainage'],
      ['layers[0].thicknes', 'thickness'],
    ],
  ],
  structuralThickness: [
    structuralThickness,
    { needed: 3, coefficient: '0.14', step: '1 in' },
    [
      ['steps', 'step'],
      ['abov', 'above'],
    ],
  ],
  modulusFromCbr: [modulusFromCbr, { cbr: 5 }, [['CBR', 'cbr']]],
  layerCoefficient: [
    layerCoefficient,
    { layer: 'base', modulus: '31000 psi' },
    [['modulu', 'modulus']],
  ],
};

describe('misspelt fields', () => {
  testMisspelt(cases);
});

describe('garbage', () => {
  testGarbage(
    Object.fromEntries(Object.entries(cases).map(([name, [run, valid]]) => [name, [run, valid]])),
  );
});
