import { MOST_LIFTS } from '../../build-up/lifts.js';
import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { isLeftOut } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import { MATERIALS_OF } from '../schema/layer-kinds.js';
import { type PartJob, type PartPavement } from './part-job.js';
import { requireId } from './unknown-id.js';

type PartMaterials = NonNullable<PartJob['materials']>;
type Group = 'stones' | 'sands' | 'pavers';

/** Name of one material of a group. */
const ONE = { stones: 'stone', sands: 'sand', pavers: 'paver' } as const;

/** Checks that ids are unique, packs have one measure, patterns are given, and the fill and a size of pavers are given. Internal. */
export function checkMaterials(reader: Reader, { materials }: PartJob): void {
  if (materials === undefined) return;
  checkIds(reader, materials);
  checkPatterns(reader, materials);
  for (const group of ['stones', 'sands'] as const) {
    materials[group]?.forEach((one, index) => {
      if (one?.pack !== undefined) checkPack(reader, one.pack, ['materials', group, index, 'pack']);
    });
  }
  const { fill } = materials;
  if (fill !== undefined) {
    requireKnown(reader, materials, { group: 'stones', id: fill, path: ['materials', 'fill'] });
  }
  if (materials.jointSand !== undefined && isLeftOut(materials, 'pavers')) {
    const message = 'missing. Describe the pavers: joint sand is worked out from their size';
    reader.fail('REQUIRED', ['materials', 'pavers'], message);
  }
}

/** Direction and off-cuts are for counting the cuts of a pattern. */
function checkPatterns(reader: Reader, { pavers = [] }: PartMaterials): void {
  pavers.forEach((paver, index) => {
    if (paver === undefined || !isLeftOut(paver, 'pattern')) return;
    const needs = (['axis', 'reuse'] as const).find((name) => paver[name] !== undefined);
    if (needs === undefined) return;
    const path = ['materials', 'pavers', index, 'pattern'];
    reader.fail('REQUIRED', path, `missing. ${needs} needs it`, { needs });
  });
}

/** Checks that no two materials share an id, whatever their group. */
function checkIds(reader: Reader, materials: PartMaterials): void {
  const first = new Map<string, string>();
  for (const group of ['stones', 'sands', 'pavers'] as const) {
    materials[group]?.forEach((one, index) => {
      if (one?.id === undefined) return;
      const earlier = first.get(one.id);
      if (earlier === undefined) first.set(one.id, `${group}[${index}]`);
      else if (!earlier.startsWith(group)) {
        const message = `${shown(one.id)} is already used by ${earlier}. Give each material its own id`;
        const params = { id: one.id, earlier };
        reader.fail('DUPLICATE_ID', ['materials', group, index, 'id'], message, params);
      }
    });
  }
}

type PartPack = NonNullable<NonNullable<NonNullable<PartMaterials['stones']>[number]>['pack']>;

function checkPack(reader: Reader, pack: PartPack, path: FieldPath): void {
  const isNothing = isLeftOut(pack, 'volume') && isLeftOut(pack, 'mass');
  if (isNothing) reader.fail('REQUIRED', path, 'missing. Give the volume or the mass of a pack');
  if (pack.volume === undefined || pack.mass === undefined) return;
  reader.fail('CONFLICTING_FIELDS', [...path, 'mass'], 'give volume or mass, not both', {
    choices: 'volume, mass',
  });
}

/** Checks that layers and border of a pavement name materials of the right kind. Internal. */
export function checkMaterialsOf(
  reader: Reader,
  { materials }: PartJob,
  { pavement, path }: { readonly pavement: PartPavement; readonly path: FieldPath },
): void {
  pavement.layers?.forEach((layer, index) => {
    if (layer?.kind === undefined) return;
    const at = [...path, 'layers', index];
    const group = MATERIALS_OF[layer.kind];
    if (isLeftOut(layer, 'material') && group !== 'pavers') {
      const message = `missing. Name one of materials.${group} by its id`;
      reader.fail('REQUIRED', [...at, 'material'], message);
    }
    if (layer.material === undefined || materials === undefined) return;
    const known = { group, id: layer.material, path: [...at, 'material'] };
    if (!requireKnown(reader, materials, known) || group !== 'stones') return;
    checkLifts(reader, materials, { layer, path: [...at, 'thickness'] });
  });
  const paver = pavement.border?.paver;
  checkField(reader, materials, { pavement, path });
  if (paver === undefined || materials === undefined) return;
  const at = [...path, 'border', 'paver'];
  requireKnown(reader, materials, { group: 'pavers', id: paver, path: at });
}

/** Checks that a border or joint sand has the paver of the field, whose size they need. */
function checkField(
  reader: Reader,
  materials: PartMaterials | undefined,
  { pavement, path }: { readonly pavement: PartPavement; readonly path: FieldPath },
): void {
  const { border, layers = [] } = pavement;
  const index = layers.findIndex((layer) => layer?.kind === 'paver');
  const field = layers[index];
  if (field === undefined || !isLeftOut(field, 'material')) return;
  const why =
    border !== undefined
      ? 'a border needs the size of the pavers beside it'
      : 'joint sand is worked out from their size';
  if (border === undefined && materials?.jointSand === undefined) return;
  const message = `missing. Name one of materials.pavers by its id: ${why}`;
  reader.fail('REQUIRED', [...path, 'layers', index, 'material'], message);
}

function requireKnown(
  reader: Reader,
  materials: PartMaterials,
  { group, id, path }: { readonly group: Group; readonly id: string; readonly path: FieldPath },
): boolean {
  const isRead = isLeftOut(materials, group) || materials[group] !== undefined;
  const ids = (materials[group] ?? []).map((one) => one?.id);
  return !isRead || requireId(reader, path, { what: ONE[group], id, ids });
}

type PartLayer = NonNullable<NonNullable<PartPavement['layers']>[number]>;

/** Checks that the stone is not placed in too many lifts. */
function checkLifts(
  reader: Reader,
  { stones = [] }: PartMaterials,
  { layer, path }: { readonly layer: PartLayer; readonly path: FieldPath },
): void {
  const stone = stones.find((one) => one?.id === layer.material);
  if (stone?.maxLift === undefined || layer.thickness === undefined) return;
  const count = wholeNumberUp(layer.thickness, stone.maxLift);
  if (count <= MOST_LIFTS) return;
  const message = `makes ${count} lifts of ${shown(layer.material)}, more than ${MOST_LIFTS}. Check the digits and the unit`;
  reader.fail('OUT_OF_RANGE', path, message, { got: count });
}
