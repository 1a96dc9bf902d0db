/** What a job file may hold where nobody has checked it. */
export type Loose = Record<string, unknown>;

/** A job file as it comes from JSON: of known outline, with anything in its fields. */
export interface LooseJob extends Loose {
  materials: Loose & { stones: Loose[]; sands: Loose[]; pavers: Loose[] };
  stakes: Loose[];
  pavements: (Loose & { layers: Loose[] })[];
  stringLines: (Loose & { stakes: unknown[] })[];
  soil: Loose;
  truck: Loose;
}
