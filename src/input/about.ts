import type { Dimension } from '../units/catalogue.js';
import type { ListRule } from './field.js';
import type { QuantityRange } from './ranges.js';
import type { NumberRule } from './rule.js';
import type { Field, Shape } from './shape.js';

/** What a field takes, as data. Internal. */
export type About =
  | { readonly kind: 'quantity'; readonly range: QuantityRange<Dimension> }
  | { readonly kind: 'number' | 'whole'; readonly rule: NumberRule }
  | { readonly kind: 'flag' }
  | { readonly kind: 'choice'; readonly choices: readonly (string | number)[] }
  | { readonly kind: 'text'; readonly most: number }
  | { readonly kind: 'object'; readonly shape: Shape; readonly name: string | undefined }
  | { readonly kind: 'list'; readonly item: Field<unknown>; readonly rule: ListRule }
  | { readonly kind: 'either'; readonly fields: readonly Field<unknown>[] }
  | {
      readonly kind: 'custom';
      readonly schema: JsonSchemaPart;
      /** What the entries of a list are. */
      readonly items: Field<unknown> | undefined;
    };

/** A part of a JSON Schema. Internal. */
export type JsonSchemaPart = Readonly<Record<string, unknown>>;
