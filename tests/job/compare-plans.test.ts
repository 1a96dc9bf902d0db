import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attempt } from 'settline';
import {
  comparePlans,
  describeChange,
  planFromJSON,
  planJob,
  readJob,
  type JobPlan,
  type PlanChange,
} from 'settline/job';
import { isQuantity, type Length, type Volume } from 'settline/units';
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import { cedarCourtFile } from '../cedar-court.js';
import { valueAt } from '../job-edits.js';
import type { LooseJob } from '../loose-job.js';
import { plainCourtAlone, plainCourtFile } from '../plain-court.js';
import { runs } from '../runs.js';
import { slateWharfFile } from '../slate-wharf.js';

const planOf = (file: unknown): JobPlan => planJob(readJob(file));

/** The plan of a file after an edit. */
function edited(file: LooseJob, edit: (job: LooseJob) => void): JobPlan {
  edit(file);
  return planOf(file);
}

const changesBy = (file: () => LooseJob, edit: (job: LooseJob) => void) =>
  comparePlans(planOf(file()), edited(file(), edit));

const words = (changes: readonly PlanChange[], system: 'us' | 'metric' = 'us') =>
  changes.map((change) => describeChange(change, { system }));

const thickness = (job: LooseJob, to: string) => {
  Object.assign(job.pavements[0]?.layers[2] ?? {}, { thickness: to });
};

describe('a thicker base on the plain court, by pencil', () => {
  const changes = changesBy(plainCourtAlone, (job) => {
    thickness(job, '9 in');
  });
  const said = words(changes);

  test('depths go down by the inch', () => {
    for (const text of [
      'Parking court: thickness of base 9 in, was 8 in (1 in more).',
      'Parking court: depth of all layers 13 1/4 in, was 12 1/4 in (1 in more).',
      'Parking court: lift 1, compacted 4 1/2 in, was 4 in (1/2 in more).',
      'String kerb: subgrade below it 31 1/4 in, was 30 1/4 in (1 in more).',
      'String kerb: lift 1 top below it 26 3/4 in, was 26 1/4 in (1/2 in more).',
      'Stake K1 on string kerb: depth of dig 13 3/4 in, was 12 3/4 in (1 in more).',
      // the base goes as far past the restraint as it is thick
      'Parking court: dig line outside edge 1 13 in, was 12 in (1 in more).',
    ]) {
      expect(said).toContain(text);
    }
  });

  test('a difference is that of the printed depths', () => {
    // 21.122 in and 20.981 in
    expect(said).toContain(
      'String kerb: base top below it, as placed 21 in, was 21 1/8 in (1/8 in less).',
    );
    // 4 / 0.78 = 5.128 in and 4.5 / 0.78 = 5.769 in: 0.641 in apart
    expect(said).toContain('Parking court: lift 1, loose 5 3/4 in, was 5 1/8 in (5/8 in more).');
  });

  test('printed figures add up, in both systems', () => {
    const figures = /^.*? (-?[\d.]+) (\S.*), was (-?[\d.]+) \2 \(([\d.]+) \2 (less|more)\)\.$/;
    const matched = (['us', 'metric'] as const).flatMap((system) =>
      words(changes, system).flatMap((text) => {
        const found = figures.exec(text);
        return found === null ? [] : [found];
      }),
    );
    for (const [text, after, , before, by, way] of matched) {
      const sign = way === 'less' ? -1 : 1;
      expect(Number(after) - Number(before), text).toBeCloseTo(sign * Number(by), 6);
    }
    expect(matched.length).toBeGreaterThan(40);
  });

  test('what stays is not said', () => {
    expect(said.filter((text) => text.includes('base top below it 2'))).toEqual([]);
    expect(said.filter((text) => text.includes('thickness of bedding'))).toEqual([]);
    expect(said.filter((text) => text.includes('area of paving'))).toEqual([]);
    expect(said.filter((text) => text.includes('edge 4'))).toEqual([]);
  });

  test('orders, spoil and areas follow', () => {
    // 36 ft and 14 ft, 13 in more on three sides: 37.0833 ft by 16.1667 ft
    const area = (36 + 13 / 12) * (14 + 26 / 12);
    const stone = changes.find(({ about, what }) => about === 'order' && what === 'loose');
    expect((stone?.after as Volume).toNumber('ft3')).toBeCloseTo((area * 0.75 * 1.04) / 0.78, 6);
    expect((stone?.before as Volume).toNumber('ft3')).toBeCloseTo((592 * (2 / 3) * 1.04) / 0.78, 6);
    expect((stone?.difference as Volume).toNumber('ft3')).toBeCloseTo(
      (area * 0.75 * 1.04) / 0.78 - (592 * (2 / 3) * 1.04) / 0.78,
      6,
    );
    expect(changes.some(({ about, subject }) => about === 'haul' && subject === 'soil')).toBe(true);
    expect(changes.some(({ about, what }) => about === 'area' && what === 'area of all digs')).toBe(
      true,
    );
  });
});

describe('loads and packs', () => {
  test('a smaller truck changes loads and nothing else', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      job.truck['payload'] = '10 ton-us';
    });
    expect(new Set(changes.map(({ about }) => about))).toEqual(new Set(['loads']));
    expect(words(changes)).toContain('Crushed stone: loads 3, was 2 (1 more).');
  });

  test('packs are counted again', () => {
    const withPack = (holds: number) => (job: LooseJob) => {
      Object.assign(job.materials.pavers[0] ?? {}, { packs: [{ name: 'pallet', holds }] });
    };
    const before = edited(plainCourtAlone(), withPack(400));
    const after = edited(plainCourtAlone(), withPack(700));
    const changes = comparePlans(before, after);
    expect(changes.map(({ what }) => what)).toEqual(['to order', 'packs']);
    expect(changes[1]?.path).toEqual(['totals', 'pavers', 0]);
  });

  test('joint sand that the job did not have is new', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      Object.assign(job.materials, { jointSand: { density: '1600 kg/m3' } });
    });
    expect(changes).toMatchObject([
      { kind: 'added', about: 'order', subject: 'joint sand', what: 'needed', before: null },
    ]);
    expect(words(changes)[0]).toMatch(/^Joint sand is new: needed [\d.]+ lb\.$/);
  });
});

describe('every part that an edit touches is listed', () => {
  const whats = (changes: readonly PlanChange[], subject: string) =>
    changes.filter((change) => change.subject === subject).map(({ what }) => what);

  test('a thicker base: loose, weight, loads and compacted of the stone, and the soil', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      thickness(job, '9 in');
    });
    expect(whats(changes, 'crushed stone')).toEqual(['loose', 'weight', 'loads', 'compacted']);
    expect(whats(changes, 'soil').slice(0, 2)).toEqual(['loose', 'weight']);
    expect(whats(changes, 'job')).toEqual(['area of all digs', 'area of all bases']);
  });

  test('settlement: the bed, the pavers and the screed as placed', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      Object.assign(job.materials.sands[0] ?? {}, { settlement: '1/4 in' });
    });
    expect(whats(changes, 'Parking court')).toEqual(['settlement of the bedding']);
    expect(whats(changes, 'string kerb')).toEqual([
      'finished grade below it, as placed',
      'bedding top below it, as placed',
    ]);
    expect(words(changes)).toContain(
      'String kerb: bedding top below it, as placed 21 in, was none.',
    );
  });

  test('another backsight: the rods at the stakes and nothing else', () => {
    const changes = changesBy(slateWharfFile, (job) => {
      const levels = job['levelling'] as { backsight: string };
      levels.backsight = '4.65 ft';
    });
    const rods = changes.filter(({ what }) => what.startsWith('rod on '));
    expect(rods.length).toBeGreaterThan(0);
    expect(new Set(changes.map(({ about }) => about))).toEqual(new Set(['stake']));
  });

  test('an edge that is held: its kind, base and dig line', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      Object.assign(job.pavements[0] ?? {}, { edges: ['restraint', 'open', 'open', 'building'] });
    });
    expect(whats(changes, 'Parking court')).toEqual(
      expect.arrayContaining([
        'dig line outside edge 1',
        'base outside edge 1',
        'what lies along edge 1',
        'area of base',
        'area of dig',
        'soil to dig, bank',
      ]),
    );
    expect(words(changes)).toContain('Parking court: what lies along edge 1 restraint, was open.');
  });

  test('a stake pushed out of line: its move', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      Object.assign(job.stakes[1] ?? {}, { y: '-2 ft 1 in' });
    });
    expect(words(changes)).toContain('Stake K2 on string kerb: move left, was none.');
    expect(words(changes)).toContain('Stake K2 on string kerb: distance to move 1 in, was none.');
  });
});

describe('what is in one plan only is said once', () => {
  test('a pavement and its string that are gone', () => {
    const changes = comparePlans(planOf(plainCourtFile()), planOf(plainCourtAlone()));
    const gone = changes.filter(({ kind }) => kind === 'removed');
    expect(words(gone).slice(0, 2)).toEqual(['Terrace is gone.', 'String garden is gone.']);
    expect(gone.filter(({ subject }) => subject.includes('garden'))).toHaveLength(1);
    const added = comparePlans(planOf(plainCourtAlone()), planOf(plainCourtFile())).filter(
      ({ kind }) => kind === 'added',
    );
    expect(words(added).slice(0, 2)).toEqual(['Terrace is new.', 'String garden is new.']);
  });

  test('a stake that is gone', () => {
    const changes = changesBy(plainCourtAlone, (job) => {
      job.stakes.splice(1, 1);
      job.stringLines[0]?.stakes.splice(1, 1);
    });
    const [gone, ...rest] = changes.filter(({ subject }) => subject.includes('K2'));
    expect(gone).toMatchObject({ kind: 'removed', about: 'stake', after: null });
    expect(rest).toEqual([]);
    expect(gone === undefined ? '' : describeChange(gone, { system: 'us' })).toBe(
      `Stake K2 on string kerb is gone: station 12' 0".`,
    );
  });

  test('another order of pavements, strings and stakes is no change', () => {
    expect(
      changesBy(slateWharfFile, (job) => {
        job.pavements.reverse();
        job.stringLines.reverse();
        job.stakes.reverse();
      }).filter(({ about }) => about !== 'warning'),
    ).toEqual([]);
  });
});

describe('warnings', () => {
  const sink = (job: LooseJob) => {
    const [court] = job.pavements;
    Object.assign(court?.layers[0] ?? {}, { thickness: '2 in' });
  };

  test('a new warning, one that is gone, and one with other figures', () => {
    const [before, after] = [planOf(plainCourtAlone()), edited(plainCourtAlone(), sink)];
    const about = (changes: readonly PlanChange[]) =>
      changes.filter((change) => change.about === 'warning');
    const added = about(comparePlans(before, after));
    expect(added.map(({ kind }) => kind)).toContain('added');
    expect(words(added).every((text) => text.startsWith('New warning: '))).toBe(true);
    const gone = about(comparePlans(after, before));
    expect(words(gone).every((text) => text.startsWith('No longer: '))).toBe(true);
    const thinner = edited(plainCourtAlone(), (job) => {
      Object.assign(job.pavements[0]?.layers[0] ?? {}, { thickness: '1 3/4 in' });
    });
    const other = about(comparePlans(after, thinner)).find(({ kind }) => kind === 'changed');
    expect(other === undefined ? '' : describeChange(other, { system: 'us' })).toMatch(
      /1 3\/4 in.* Before: .*2 in/,
    );
  });
});

const VARIANTS = [
  cedarCourtFile,
  (): LooseJob => structuredClone(millGarth),
  slateWharfFile,
] as const;

interface Form {
  readonly bedding: string;
  readonly height: string;
  readonly payload: string;
  readonly above: string;
  readonly hasOld: boolean;
}

const form: fc.Arbitrary<Form> = fc.record({
  bedding: fc.constantFrom('25 mm', '30 mm', '1 in'),
  height: fc.constantFrom('250 mm', '300 mm', '16 in'),
  payload: fc.constantFrom('8 t', '12 t'),
  above: fc.constantFrom('0 mm', '-200 mm', '40 mm'),
  hasOld: fc.boolean(),
});

/** The plan of a site in one of many forms. */
const formOf = (site: () => LooseJob, { bedding, height, payload, above, hasOld }: Form): JobPlan =>
  edited(site(), (job) => {
    Object.assign(job.pavements[0]?.layers[1] ?? {}, { thickness: bedding });
    Object.assign(job.pavements[1] ?? {}, { existingAboveFinish: above });
    job['stringHeight'] = height;
    job.truck['payload'] = payload;
    if (!hasOld) delete job['oldPaving'];
  });

const MIRRORED = { changed: 'changed', added: 'removed', removed: 'added' } as const;

/** What a change says, whatever its place in the list. */
const gist = ({ kind, about, subject, what, before, after, difference }: PlanChange) =>
  JSON.stringify({ kind, about, subject, what, before, after, difference });

const mirrored = (change: PlanChange) => {
  const { difference, kind, before, after } = change;
  return gist({
    ...change,
    kind: MIRRORED[kind],
    before: after,
    after: before,
    difference: isQuantity(difference)
      ? (difference as Length).negated()
      : difference === null
        ? null
        : -difference,
  });
};

describe('laws', () => {
  test('a plan compared with itself, read back or planned again has no change', () => {
    for (const site of VARIANTS) {
      const plan = planOf(site());
      expect(comparePlans(plan, plan)).toEqual([]);
      expect(comparePlans(plan, planOf(site()))).toEqual([]);
      expect(comparePlans(plan, planFromJSON(JSON.parse(JSON.stringify(plan))))).toEqual([]);
    }
  });

  test('the other way round every change is mirrored; each path is in its plan', () => {
    fc.assert(
      fc.property(fc.constantFrom(...VARIANTS), form, form, (site, one, other) => {
        const [a, b] = [formOf(site, one), formOf(site, other)];
        const [there, back] = [comparePlans(a, b), comparePlans(b, a)];
        expect(back.map(gist).sort()).toEqual(there.map(mirrored).sort());
        for (const { kind, path, what } of there) {
          const found = valueAt(kind === 'removed' ? a : b, path);
          expect(found, `${path.join('.')}: ${what}`).not.toBeUndefined();
        }
      }),
      runs(12),
    );
  });

  test('a change less than float noise is none, a real one is', () => {
    const moved = (by: string) =>
      changesBy(plainCourtAlone, (job) => {
        Object.assign(job.stakes[1] ?? {}, { ground: by });
      }).filter(({ what }) => what === 'ground below the string');
    expect(moved('18.000000001 in')).toEqual([]);
    expect(moved('18.0001 in')).toHaveLength(1);
    expect(words(moved('18.0001 in'))).toEqual([
      'Stake K2 on string kerb: ground below the string 18 in, changed by less than is printed.',
    ]);
  });
});

test('changes are frozen, and each is a sentence in both systems', () => {
  const changes = comparePlans(
    planOf(slateWharfFile()),
    edited(slateWharfFile(), (job) => {
      thickness(job, '12 in');
      job.truck['payload'] = '9 t';
    }),
  );
  expect(Object.isFrozen(changes) && Object.isFrozen(changes[0])).toBe(true);
  for (const system of ['us', 'metric'] as const) {
    for (const text of words(changes, system)) {
      expect(text).toMatch(/^[A-Z0-9].*\.$/s);
      expect(text).not.toMatch(/undefined|NaN|\[object/);
    }
  }
});

test('what is no plan and no change is refused', () => {
  const plan = planOf(plainCourtAlone());
  const code = (run: () => unknown) => {
    const outcome = attempt(run);
    return outcome.ok ? 'none' : outcome.errors[0]?.code;
  };
  expect(code(() => comparePlans(plan, { ...plan }))).toBe('PLAN_INVALID');
  expect(code(() => comparePlans(undefined as never, plan))).toBe('PLAN_INVALID');
  const [change] = comparePlans(plan, planOf(plainCourtFile()));
  if (change === undefined) expect.unreachable();
  expect(code(() => describeChange({ ...change }, { system: 'us' }))).toBe('WRONG_TYPE');
  expect(code(() => describeChange(change, { system: 'old' } as never))).toBe('UNKNOWN_CHOICE');
});
