import { excavationDepth, type BuildUp } from 'settline/build-up';
import { stringDepths } from 'settline/string-line';
import type { Length } from 'settline/units';
import { entry, shownResult, type Block, type BlockResult } from '../block/block.js';
import { drawLayers } from '../block/draw-layers.js';
import { inTurn, refusal } from '../block/in-turn.js';
import { layersField, layersOf, LAYERS, standInLayers } from '../block/layers.js';
import { both } from '../page/both-systems.js';
import type { JsonObject } from '../page/json-text.js';

/** What to dig, in one sentence. */
function answerOf(soil: Length, belowString: Length): string {
  const part = soil.isNegative()
    ? `Fill ${both(soil.abs())} to reach the subgrade.`
    : `Dig ${both(soil)} of soil.`;
  return `${part} The subgrade is ${both(belowString)} below the string.`;
}

interface Depths {
  readonly dig: ReturnType<typeof excavationDepth>;
  readonly string: ReturnType<typeof stringDepths>;
  readonly buildUp: BuildUp;
}

function depthsOf(buildUp: BuildUp, rest: JsonObject, stringHeight: unknown): BlockResult {
  const { dig, string } = inOneGo(buildUp, rest, stringHeight);
  const { existingAboveFinish, removedSurface } = heightsOf(dig, buildUp);
  const { total, soil, cautions } = dig;
  const belowString = string.subgrade;
  const shown = shownResult(
    { soil, total, subgradeBelowString: belowString, cautions },
    answerOf(soil, belowString),
    (width) =>
      drawLayers(
        {
          buildUp,
          stringHeight: string.stringHeight,
          surface: existingAboveFinish,
          removed: removedSurface,
        },
        width,
      ),
  );
  return { ...shown, working: [...dig.working, ...string.working] };
}

/** Both calculations, with the faults of both. */
function inOneGo(buildUp: BuildUp, rest: JsonObject, stringHeight: unknown): Depths {
  const outcome = inTurn(
    () => excavationDepth({ ...rest, buildUp }),
    () => excavationDepth({ buildUp }),
    (dig): Depths => {
      const stakes = [{ id: 'string', station: '0 ft' }];
      const string = stringDepths({ buildUp, stringHeight: stringHeight as string, stakes });
      return { dig, string, buildUp };
    },
  );
  if (outcome.ok) return outcome.value;
  throw refusal(outcome.errors);
}

/** The heights that were put in, read back from the results. */
const heightsOf = (
  { total, soil }: Depths['dig'],
  buildUp: BuildUp,
): { readonly existingAboveFinish: Length; readonly removedSurface: Length } => ({
  existingAboveFinish: total.minus(buildUp.total),
  removedSurface: total.minus(soil),
});

export const block: Block = {
  title: 'Depth of dig',
  calls: ['buildUp', 'excavationDepth', 'stringDepths'],
  fields: [
    entry('stringHeight', 'String above finished grade', { hint: 'such as 15 in or 380 mm' }),
    layersField,
    entry('removedSurface', 'Old paving to strip', { hint: 'empty: none', isOptional: true }),
    entry('existingAboveFinish', 'Existing surface above finished grade', {
      hint: 'negative if it is below; empty: level with it',
      isOptional: true,
    }),
  ],
  options: { stringHeight: '15 in', layers: LAYERS, removedSurface: '3 in' },
  run: ({ layers, stringHeight, ...rest }) =>
    inTurn(
      () => layersOf(layers),
      standInLayers,
      (buildUp) => depthsOf(buildUp, rest, stringHeight),
    ),
};
