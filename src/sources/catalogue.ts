/** How far a figure can be traced. */
export type SourceStatus =
  /** Read in the named publication. */
  | 'read'
  /** A publication is named, but the figure was written down from memory: confirm it before use. */
  | 'memory'
  /** A fact of the trade without a publication. */
  | 'common-practice'
  /** Geometry or arithmetic that needs no publication. */
  | 'derived';

/** A publication, or the word for having none. */
export interface Source {
  readonly title: string;
  readonly section: string;
  readonly status: SourceStatus;
}

const source = (title: string, section: string, status: SourceStatus = 'read'): Source =>
  Object.freeze({ title, section, status });

/** Every source that a figure or formula of the library is traced to. */
export const SOURCES = Object.freeze({
  'nist-hb44': source('NIST Handbook 44 (2026 edition)', 'Appendix C, tables of units'),
  'nist-sp811': source(
    'NIST Special Publication 811 (2008), Guide for the Use of the SI',
    'Appendix B.7 (rounding) and B.8 (factors)',
  ),
  'survey-foot-notice': source(
    '85 FR 62698 (5 October 2020), deprecation of the US survey foot',
    'final determination',
  ),
  'astm-e29': source(
    'ASTM E29, Using Significant Digits in Test Data',
    'rounding method',
    'memory',
  ),
  'paver-tolerances': source(
    'Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade association guide)',
    'tolerance tables',
  ),
  'paver-construction': source(
    'PAV-TEC-002-22 Construction of Interlocking Concrete Pavements',
    'Purpose',
  ),
  'edge-restraints': source(
    'Tech Spec 3 Edge Restraints for Interlocking Concrete Pavements',
    'Design Considerations',
  ),
  'equipment-operator': source('Equipment Operator training manual 14081', 'p. 15-42, base lifts'),
  'block-paving-guide': source('Block-paving trade guide notes', 'base layers and bedding'),
  'soil-factors-text': source(
    'Army / Navy equipment training text, Table 10-1 Soil Conversion Factors',
    'sentence under the table',
  ),
  'fm-5-434': source(
    'FM 5-434 Earthmoving Operations (15 June 2000)',
    'Table 1-1 Soil conversion factors',
    'memory',
  ),
  'state-aggregate-weights': source('WSDOT Design Manual M 22-01, chapter 620', 'Exhibit 620-1'),
  'state-debris-weights': source(
    'CalRecycle construction and demolition conversion factors',
    'volume-to-weight list',
  ),
  'debris-training-sheet': source(
    'Construction and demolition debris training sheet',
    'weights list',
  ),
  'army-truck-weights': source(
    "TM 9-2320-366-10-1 operator's manual, Table 2-15 Material Weight by Volume",
    'p. 2-381',
  ),
  'permeable-tolerances': source(
    'Recommended Construction Tolerances for Permeable Interlocking Concrete Pavements (trade association, September 2020)',
    'tables',
  ),
  'bedding-sand-clause': source(
    'Municipal paver contract clause: bedding sand course',
    'grading, moisture and thickness',
  ),
  'joint-sand-clause': source(
    'Municipal paver contract clause: joint filling and final compaction',
    'grading limits',
  ),
  'laying-clause': source(
    'Municipal paver contract clause: laying of interlocking paver block',
    'closure units and alignment',
  ),
  'irc-sp-63': source('IRC:SP:63-2018', '5.2'),
  'geotextile-overlap-note': source(
    'Geosynthetics supplier technical note restating highway geotextile practice (secondary)',
    'overlap table',
  ),
  'highway-geotextiles': source(
    'AASHTO M 288 Geotextile Specification for Highway Applications',
    'appendix, overlap by soil strength',
    'memory',
  ),
  'sand-bulking-course': source(
    'Army correspondence course EN5466, concrete mix design',
    'adjusting for moisture and bulking of fine aggregate',
  ),
  'sand-bulking-notes': source(
    'Civil engineering course notes: proportioning of concrete mixes (secondary)',
    'table of bulking by moisture',
  ),
  derived: source('Geometry and arithmetic', 'worked out here', 'derived'),
  'common-practice': source('Common practice, no source', 'trade use', 'common-practice'),
  memory: source('From memory, no source read', 'confirm before use', 'memory'),
} satisfies Record<string, Source>);

/** The id of a source: the key of {@link SOURCES}. */
export type SourceId = keyof typeof SOURCES;
