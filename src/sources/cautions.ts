/** Subject of a caution. */
export type CautionId =
  | 'utilities'
  | 'excavation'
  | 'structure'
  | 'pavement-design'
  | 'ground'
  | 'drainage'
  | 'trees'
  | 'dust'
  | 'loads'
  | 'access'
  | 'laser'
  | 'cutting'
  | 'handling';

/** A warning that comes with a result. */
export interface Caution {
  /** Short name of the danger. */
  readonly id: CautionId;
  /** The danger and who decides, in words to print. */
  readonly text: string;
}

/** A result that comes with cautions. */
export interface Cautioned {
  /** What to have checked, and by whom. */
  readonly cautions: readonly Caution[];
}

const caution = (id: CautionId, text: string): Caution => Object.freeze({ id, text });

/** The cautions of the library, by what they are about. */
export const CAUTIONS: Readonly<Record<CautionId, Caution>> = Object.freeze({
  utilities: caution(
    'utilities',
    'Have buried lines located and marked before you dig, dig by hand near the marks, and follow the utility owner and local law. Nothing here shows what lies in the ground.',
  ),
  excavation: caution(
    'excavation',
    'An open dig can cave in or flood. A competent person decides on slopes, shoring, access and spoil under the rules where you work.',
  ),
  structure: caution(
    'structure',
    'These thicknesses are published minimums for light use, not a pavement design. Trucks, weak or wet soil, fill and frost call for a licensed engineer.',
  ),
  'pavement-design': caution(
    'pavement-design',
    'An equation is not a pavement design. It was fitted to asphalt roads on one soil. For other pavements, soils and climates a licensed engineer chooses the inputs and takes responsibility for the result.',
  ),
  ground: caution(
    'ground',
    'Soil, frost and water figures are estimates from published methods, not a design. Soils differ within a few feet. A licensed engineer decides for fill, weak or wet soil, deep frost, and water near buildings.',
  ),
  drainage: caution(
    'drainage',
    'Water must run away from buildings and not onto adjoining land. Check falls at doors and walls against the local code.',
  ),
  trees: caution(
    'trees',
    'Cutting roots can kill or topple a tree. Keep out of root zones; ask the authority and an arborist first.',
  ),
  dust: caution(
    'dust',
    'Sawing and breaking old paving makes silica dust. Cut wet and follow the dust rules where you work.',
  ),
  loads: caution(
    'loads',
    'Legal loads depend on the truck, its axles and the road. The truck operator and local law decide.',
  ),
  access: caution(
    'access',
    'Figures for accessible routes are quoted for information. The law where you work and its authority decide what applies and what passes.',
  ),
  laser: caution(
    'laser',
    'Never look into the beam. Set it above or below eye height, and follow the instructions of the instrument.',
  ),
  cutting: caution(
    'cutting',
    'Cutting pavers makes silica dust, noise and chips. Cut wet or with extraction, protect eyes, ears and lungs, and follow the dust rules where you work.',
  ),
  handling: caution(
    'handling',
    'Pallets and slabs crush. Keep to the rating of forks, slings, tail lift and the ground they stand on, and to the lifting rules where you work.',
  ),
});

/** Picks cautions by id, in the order given. */
export function cautionsFor(...ids: readonly CautionId[]): readonly Caution[] {
  return Object.freeze(ids.map((id) => CAUTIONS[id]));
}
