/** What a job file may hold where nobody has checked it. */
export type Loose = Record<string, unknown>;

/** A job file as it comes from JSON: of known outline, with anything in its fields. */
export interface LooseJob extends Loose {
  pavements: (Loose & { layers: Loose[] })[];
  stringLines: (Loose & { stakes: Loose[] })[];
  base: Loose;
  bedding: Loose;
  paver: Loose;
  soil: Loose;
  truck: Loose;
}
