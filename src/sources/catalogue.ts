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
  'ada-ramps': source('2010 ADA Standards for Accessible Design', '405.2 and Table 405.2'),
  'ada-counter-slope': source('2010 ADA Standards for Accessible Design', '406.2'),
  'ada-route': source('2010 ADA Standards for Accessible Design', '403.3', 'memory'),
  'ada-level-change': source(
    '1991 ADA Standards for Accessible Design',
    '4.5.2 (section 303 of 2010 keeps the figures)',
  ),
  'ramp-cross-slope': source('California Building Code, aligned with ADA 405.3', '11B-405.3'),
  'residential-code': source(
    'International Residential Code, as quoted among inspectors',
    'R401.3, drainage at foundations',
  ),
  'clay-paving-guide': source('Clay paving laying guide', 'level below the damp-proof course'),
  'driveway-profiles': source('TxDOT Roadway Design Manual', 'appendix on driveways, profiles'),
  'masonry-handbook': source('Masonry and Concrete (handbook)', 'p. 283, steps'),
  'level-booking': source(
    'University civil-engineering levelling lecture notes (height of plane of collimation)',
    'worked table, steps 1 to 4',
  ),
  'grade-with-a-level': source(
    'Equipment Operator, Basic (NAVEDTRA 14081), checking grade with a level instrument',
    'p. 15-30, Figures 15-51 to 15-53',
  ),
  'two-peg-test': source('Two-peg test worked answer', 'problem 2.1'),
  'laser-reversal': source(
    'Rotating-laser operating instructions, 180-degree reversal check',
    'levelling accuracy check, p. 27',
  ),
  'earth-curvature': source(
    'Engineering surveying exercise: distance for a correction of 3 mm',
    'question text (diameter of the sphere, refraction)',
  ),
  'misclosure-rules': source('Allowable misclosure formulas', 'several levelling texts'),
  'handbook-functions': source(
    'Handbook of Mathematical Functions (National Bureau of Standards)',
    '26.5.8 and 26.7.1, incomplete beta function and Student distribution',
    'memory',
  ),
  'outlier-guidance': source(
    'Geodetic outlier-test guidance',
    'abstracts: extreme residuals, probability divided by their number',
  ),
  'curve-stakeout': source(
    'Engineering Aid training manual 14070',
    'curves: middle ordinate, chords and deflection angles',
  ),
  'squaring-lines': source(
    'Army carpentry course, squaring building lines',
    'lesson 1, diagonal and 3-4-5 methods',
  ),
  // site
  'vehicle-weights': source(
    'FHWA, Questions and Answers About Vehicle Size and Weight',
    '23 CFR 658.17 Weight',
  ),
  'bridge-formula': source(
    'Bridge formula explanation and worked examples (highway agency)',
    'formula and rounding to 500 lb',
  ),
  'axle-weight-table': source(
    'California Vehicle Code 35551 as printed in Assembly Bill 1953 (2023-2024)',
    'table of weights by distance between extreme axles',
  ),
  'excavation-rules': source(
    '29 CFR 1926 Subpart P Excavations (read in copies)',
    '1926.651, 1926.652 and Appendix B, Table B-1',
  ),
  'excavation-numbers': source(
    'Contractor association sheet: excavation by the numbers',
    'list of numbers',
  ),
  'silica-table-1': source(
    '29 CFR 1926.1153 Respirable crystalline silica (same table in Title 8 CCR 1532.3)',
    'Table 1, rows i, ii and iv',
  ),
  'tolerance-zones': source(
    'CGA Best Practices 5-19; state one-call pages',
    'tolerance zone, colours',
  ),
  'tree-extension': source('NC State Extension, tree protection publication', 'critical root zone'),
  'tree-code': source('Vancouver WA municipal code', '20.170.100'),
  'tree-city-page': source('City page on trees and construction', 'critical root zone'),
  'tree-council': source('Urban forest council page', 'root zone, least radius'),
  'tree-stormwater': source('State stormwater manual', 'disturbance within the drip line'),
  'tree-trench-study': source('Study of root loss beside trenches', 'abstract'),
  'fm-5-430': source('FM 5-430-00-1', 'Appendix H, geotextile design for unpaved aggregate roads'),
  'production-handbook': source(
    "Equipment-maker's performance handbook, edition 47",
    'pp. 18-30, 18-31 and 30-2',
  ),
  'haul-notes': source(
    'Construction engineering management course notes, volume 2',
    'chapter 17, balance of trucks and loader',
  ),
  'hand-dig-table': source('Project-controls guild table of hand excavation', 'clay'),
  'earthmoving-handbook': source(
    'Earthmoving handbook (university digital library scan)',
    'pp. 94-95, cones and ridges',
  ),
  // checks
  'permeable-tolerances': source(
    'Recommended Construction Tolerances for Permeable Interlocking Concrete Pavements (trade association, September 2020)',
    'tables',
  ),
  'ufgs-02749': source('UFGS 02749', '3.11.8, straightedge testing'),
  'ufgs-02780': source('UFGS 02780 Concrete Block Pavements', 'block placement'),
  'city-526': source(
    'Specification 526 Architectural Pavers (in a city contract document)',
    'paragraph G, before 526-4',
  ),
  'irc-sp-63-2004': source(
    'IRC:SP:63-2004 Guidelines for interlocking concrete block pavement',
    'Annexure 1.3 and 1.4',
  ),
  'irc-sp-63-2018': source('IRC:SP:63-2018', '5.2'),
  'municipal-clause': source(
    'Municipal paver contract clauses: bedding, laying, joint filling',
    'clauses',
  ),
  'bedding-sand-clause': source(
    'Municipal paver contract clause: bedding sand course',
    'grading, moisture and thickness',
  ),
  'joint-sand-clause': source(
    'Municipal paver contract clause: joint filling and final compaction',
    'grading limits',
  ),
  'washed-sand-guide': source(
    'Low Impact Development stormwater planning and design guide (wiki): Sand',
    'particle size distribution',
  ),
  'laying-clause': source(
    'Municipal paver contract clause: laying of interlocking paver block',
    'closure units and alignment',
  ),
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
  // structure
  'flexible-pavement-guide': source(
    'AASHTO Guide for Design of Pavement Structures (1993)',
    'part II, flexible pavements: the equation, its chart and the growth of traffic',
    'memory',
  ),
  'nomograph-notes': source(
    'AASHTO design nomograph lecture notes',
    'design example (subgrade of bearing ratio 3.5)',
  ),
  'layer-coefficient-sheet': source(
    'Transportation engineering exam sheet (layer-coefficient relations)',
    'problem 4 (read by machine)',
  ),
  derived: source('Geometry and arithmetic', 'worked out here', 'derived'),
  'common-practice': source('Common practice, no source', 'trade use', 'common-practice'),
  memory: source('From memory, no source read', 'confirm before use', 'memory'),
} satisfies Record<string, Source>);

/** The id of a source: the key of {@link SOURCES}. */
export type SourceId = keyof typeof SOURCES;
