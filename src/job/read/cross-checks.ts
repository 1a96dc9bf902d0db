import type { FieldPath, Issue } from '../../errors.js';
import { ringsOf } from '../../outline/ring.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { isSettlineError } from '../../errors.js';
import { MOST_LIFTS } from '../../build-up/lifts.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import { checkLevels } from './check-levels.js';
import { checkSite } from './check-site.js';
import { isStone } from '../plan/layer-kinds.js';
import type { Job } from '../schema/schema.js';

type Pavement = Job['pavements'][number];
type StringLine = Job['stringLines'][number];

/** Order of the kinds of layer from the top down. */
const ORDER = ['paver', 'bedding', 'base', 'sub-base'] as const;

/** Faults that only the whole job shows. Internal. */
export function crossChecks(job: Job): readonly Issue[] {
  const reader = makeReader();
  checkIds(reader, job.pavements, ['pavements']);
  checkIds(reader, job.stringLines, ['stringLines']);
  job.pavements.forEach((pavement, index) => {
    checkLayers(reader, pavement, ['pavements', index, 'layers']);
    checkEdges(reader, pavement, ['pavements', index, 'edges']);
  });
  checkLifts(reader, job);
  checkIds(reader, job.utilities ?? [], ['utilities']);
  checkIds(reader, job.trees ?? [], ['trees']);
  checkSite(reader, job);
  checkLevels(reader, job);
  checkStakes(reader, job);
  job.stringLines.forEach((line, index) => {
    checkLine(reader, line, job, ['stringLines', index]);
  });
  return faultsOf(reader);
}

function faultsOf(reader: Reader): readonly Issue[] {
  try {
    reader.finish();
    return [];
  } catch (error) {
    if (isSettlineError(error)) return error.issues;
    throw error;
  }
}

function checkIds(reader: Reader, list: readonly { readonly id: string }[], path: FieldPath): void {
  const seen = new Set<string>();
  list.forEach(({ id }, index) => {
    if (seen.has(id)) {
      reader.fail(
        'DUPLICATE_ID',
        [...path, index, 'id'],
        `the id ${JSON.stringify(id)} stands twice`,
        { id },
      );
    }
    seen.add(id);
  });
}

function checkLayers(reader: Reader, { layers }: Pavement, path: FieldPath): void {
  const kinds = layers.map(({ kind }) => kind);
  const ranks = kinds.map((kind) => ORDER.indexOf(kind));
  const misplaced = ranks.findIndex((rank, index) => index > 0 && rank < (ranks[index - 1] ?? 0));
  if (misplaced >= 0) {
    reader.fail(
      'LAYER_ORDER',
      [...path, misplaced, 'kind'],
      `layers run from the top down: ${ORDER.join(', ')}`,
    );
  }
  for (const kind of ['paver', 'bedding', 'base'] as const) {
    const count = kinds.filter((one) => one === kind).length;
    if (count === 0) reader.fail('REQUIRED', path, `there is no layer of kind ${kind}`);
    if (count > 1 && kind !== 'base') {
      reader.fail('DUPLICATE_LAYER', path, `there are ${count} layers of kind ${kind}`);
    }
  }
  checkLayerNames(reader, layers, path);
}

function checkLayerNames(reader: Reader, layers: Pavement['layers'], path: FieldPath): void {
  const seen = new Set<string>();
  layers.forEach(({ name, kind }, index) => {
    const label = name ?? kind;
    if (seen.has(label)) {
      reader.fail(
        'DUPLICATE_LAYER',
        [...path, index, 'name'],
        `the layer ${JSON.stringify(label)} stands twice: give each its own name`,
      );
    }
    seen.add(label);
  });
}

function checkEdges(reader: Reader, { edges, outline }: Pavement, path: FieldPath): void {
  const count = ringsOf(outline).reduce((sum, { points }) => sum + points.length, 0);
  if (edges === undefined || edges.length === count) return;
  reader.fail(
    'EDGE_COUNT',
    path,
    `${edges.length} edges listed for an outline of ${count}: one for each, edge k runs from point k to the next`,
    { edges: count, got: edges.length },
  );
}

function checkLifts(reader: Reader, { pavements, base }: Job): void {
  const stone = pavements.flatMap(({ layers }) => layers.filter(isStone));
  const count = Math.max(0, ...stone.map((layer) => wholeNumberUp(layer.thickness, base.maxLift)));
  if (count <= MOST_LIFTS) return;
  reader.fail(
    'OUT_OF_RANGE',
    ['base', 'maxLift'],
    `makes ${count} lifts: a slip of a digit or of a unit?`,
    { count },
  );
}

function checkStakes(reader: Reader, { stringLines }: Job): void {
  const seen = new Set<string>();
  stringLines.forEach(({ stakes }, line) => {
    stakes.forEach(({ id }, index) => {
      if (seen.has(id)) {
        reader.fail(
          'DUPLICATE_ID',
          ['stringLines', line, 'stakes', index, 'id'],
          `the stake ${JSON.stringify(id)} stands twice`,
          { id },
        );
      }
      seen.add(id);
    });
  });
}

function checkLine(reader: Reader, line: StringLine, job: Job, path: FieldPath): void {
  const { stakes, pavement } = line;
  if (!job.pavements.some(({ id }) => id === pavement)) {
    const ids = job.pavements.map(({ id }) => id).join(', ');
    reader.fail(
      'UNKNOWN_ID',
      [...path, 'pavement'],
      `there is no pavement ${JSON.stringify(pavement)}; there is ${ids}`,
      { id: pavement },
    );
  }
  if (stakes.length < 2) {
    reader.fail('TOO_FEW_STAKES', [...path, 'stakes'], 'a string needs two stakes or more');
    return;
  }
  const repeated = stakes.findIndex((stake, index) => {
    const before = stakes[index - 1];
    return before?.x.equals(stake.x) === true && before.y.equals(stake.y);
  });
  if (repeated > 0) {
    reader.fail(
      'POINTS_COINCIDE',
      [...path, 'stakes', repeated],
      'this stake stands where the one before it stands',
    );
    return;
  }
  const [first, last] = [stakes[0], stakes.at(-1)];
  if (first?.x.equals(last?.x ?? first.x) === true && first.y.equals(last?.y ?? first.y)) {
    reader.fail(
      'ENDS_COINCIDE',
      [...path, 'stakes'],
      'the string begins and ends at the same place',
    );
  }
}
