// Source: Tech Spec 3 Edge Restraints for Interlocking Concrete Pavements, Design Considerations:
// base extended beyond the restraint by at least its thickness; 6 in of base, 6 in. Read.
// Source: Construction Tolerances and Recommendations (trade association guide), tolerance tables:
// over-excavation the greater of 6 in or the base thickness. Read.
import { expect, test } from 'vitest';
import { baseExtension } from 'settline/build-up';

test.each([
  ['6 in', '6', 'base-thickness'],
  ['4 in', '6', 'least-extension'],
  ['10 in', '10', 'base-thickness'],
  ['8 in', '8', 'base-thickness'],
  ['5 15/16 in', '6', 'least-extension'],
] as const)('base %s is carried %s in past the restraint', (baseThickness, inches, governedBy) => {
  const result = baseExtension({ baseThickness });
  expect(result.extension.to('in').toString()).toBe(inches);
  expect(result.governedBy).toBe(governedBy);
  expect(result.sources).toEqual(['edge-restraints', 'paver-tolerances']);
  expect(result.cautions.map(({ id }) => id)).toEqual(['utilities', 'trees']);
});
