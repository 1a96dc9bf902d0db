import type { FieldPath } from '../../errors.js';
import { limitText } from '../../input/limit-text.js';
import { THICKNESS } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';
import { entry } from '../../invariant.js';
import { sum } from '../../units/aggregate.js';
import { formatLength } from '../../units/format-length.js';
import { isStone } from '../schema/layer-kinds.js';
import type { LayerKind } from '../schema/pavement-input.js';
import type { PartPavement } from './part-job.js';

type PartLayers = NonNullable<PartPavement['layers']>;

/** Order of the kinds of layer from the top down. */
const ORDER: readonly LayerKind[] = ['paver', 'bedding', 'base', 'sub-base'];

/** Checks that layers run from the top down, with one of pavers, one of bedding and one base. Internal. */
export function checkLayers(reader: Reader, layers: PartLayers | undefined, path: FieldPath): void {
  if (layers === undefined) return;
  checkNames(reader, layers, path);
  checkStone(reader, layers, path);
  const kinds = layers.map((layer) => layer?.kind);
  // if a kind could not be read, order and number are not known
  if (kinds.length === 0 || kinds.includes(undefined)) return;
  const ranks = kinds.map((kind) => ORDER.indexOf(kind ?? 'paver'));
  const misplaced = ranks.findIndex((rank, index) => index > 0 && rank < entry(ranks, index - 1));
  if (misplaced >= 0) {
    const message = `layers are not in order. List them from the top down: ${ORDER.join(', ')}`;
    reader.fail('LAYER_ORDER', [...path, misplaced, 'kind'], message);
  }
  for (const kind of ['paver', 'bedding', 'base'] as const) {
    const count = kinds.filter((one) => one === kind).length;
    if (count === 0) reader.fail('REQUIRED', path, `no layer has the kind ${kind}. Add one`);
    if (count > 1 && kind !== 'base') {
      reader.fail(
        'DUPLICATE_ID',
        path,
        `${count} layers have the kind ${kind}. Remove all but one of them`,
      );
    }
  }
}

/** Checks base and sub-base together: they are laid and ordered as one thickness of stone. */
function checkStone(reader: Reader, layers: PartLayers, path: FieldPath): void {
  const stone = layers.flatMap((layer) =>
    layer?.kind !== undefined && isStone({ kind: layer.kind }) && layer.thickness !== undefined
      ? [layer.thickness]
      : [],
  );
  if (stone.length === 0) return;
  const total = sum(stone);
  if (total.compare(THICKNESS.most) <= 0) return;
  const [got, most] = [formatLength(total), limitText(THICKNESS.most, total)];
  const message = `base and sub-base together are ${got} thick, more than ${most}. Check the digits and the units`;
  reader.fail('OUT_OF_RANGE', path, message, { got, most });
}

/** Checks the names of layers. A layer without a name has the name of its kind. */
function checkNames(reader: Reader, layers: PartLayers, path: FieldPath): void {
  const first = new Map<string, number>();
  layers.forEach((layer, index) => {
    const label = layer?.name ?? layer?.kind;
    if (label === undefined) return;
    const earlier = first.get(label);
    if (earlier === undefined) first.set(label, index);
    else {
      const message = `${shown(label)} is already used by layers[${earlier}]. Give each layer its own name`;
      reader.fail('DUPLICATE_ID', [...path, index, 'name'], message, { id: label, earlier });
    }
  });
}
