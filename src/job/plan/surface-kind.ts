/** What a surface belongs to: limits and next actions go by it. */
export type SurfaceKind = 'subgrade' | 'lift' | 'sub-base' | 'base' | 'bedding' | 'pavers';
