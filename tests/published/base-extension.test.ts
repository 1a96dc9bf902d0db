// Base goes on past the restraint by at least its thickness (6 in for 6 in of base), and by at
// least 6 in (paver-tolerances).
import { LEAST_BASE_EXTENSION } from 'settline/sources';
import { expect } from 'vitest';
import { baseExtension } from 'settline/build-up';
import { expectExact } from '../printed.js';
import { published, publishedEach } from './published.js';

publishedEach({ source: 'edge-restraints', section: 'Design Considerations', kind: 'printed' }, [
  ['6 in', '6', 'base-thickness'],
  ['4 in', '6', 'least-extension'],
  ['10 in', '10', 'base-thickness'],
  ['8 in', '8', 'base-thickness'],
  ['5 15/16 in', '6', 'least-extension'],
] as const)(
  'base %s is carried %s in past the restraint',
  ([baseThickness, inches, governedBy]) => {
    const result = baseExtension({ baseThickness });
    expectExact(result.extension.to('in').toString(), inches);
    expect(result.governedBy).toBe(governedBy);
    expect(result.sources).toEqual(['edge-restraints', 'paver-tolerances']);
    expect(result.cautions.map(({ id }) => id)).toEqual(['utilities', 'trees']);
    expect(result.working.map(({ source }) => source)).toEqual([
      governedBy === 'base-thickness' ? 'edge-restraints' : 'paver-tolerances',
    ]);
  },
);

published(
  { source: 'paver-tolerances', section: 'tolerance tables', kind: 'printed' },
  'the greater of 6 in and the base thickness',
  () => {
    expectExact(LEAST_BASE_EXTENSION.value, '6');
  },
);
