import { source, type Source } from './source.js';

/** Sources on tolerances, materials and the structure of a pavement. Internal. */
export const PAVING_SOURCES = {
  'permeable-tolerances': source(
    'Recommended Construction Tolerances for Permeable Interlocking Concrete Pavements (trade association, September 2020)',
    'tables',
  ),
  'ufgs-02749': source('UFGS 02749', '3.11.8, straightedge testing'),
  'ufgs-02780': source(
    'UFGS 02780 Concrete Block Pavements (now UFGS 32 16 15)',
    'block placement',
  ),
  'spec-526': source(
    'Specification 526 Architectural Pavers (a section of a state transport department, read in a contract document)',
    'paragraph G, before 526-4',
  ),
  'irc-sp-63-2004': source(
    'IRC:SP:63-2004 Guidelines for interlocking concrete block pavement',
    'Annexure 1.3 and 1.4',
  ),
  'irc-sp-63-2018': source('IRC:SP:63-2018', '5.2'),
  'bedding-sand-clause': source(
    'Bedding Sand Course (clause of paver block contracts)',
    'grading, moisture and thickness',
  ),
  'bedding-sand-guide': source(
    'Laying Procedures (notes restating guides T45 and T46 of a concrete masonry association)',
    'bedding sand',
  ),
  'astm-c33': source(
    'ASTM C33, as reprinted in Grading requirements of fine aggregates',
    'grading table',
  ),
  'joint-sand-clause': source(
    'Joint Filling and Final Compaction (clause of paver block contracts)',
    'grading limits',
  ),
  'astm-c144': source('ASTM C144, as reprinted in Masonry Magazine, August 1993', 'p. 17, Table 1'),
  'washed-sand-guide': source(
    'Low Impact Development stormwater planning and design guide (wiki): Sand',
    'particle size distribution',
  ),
  'laying-clause': source(
    'Laying of Interlocking Paver Block (clause of paver block contracts)',
    'joints, closure units and alignment',
  ),
  'geotextile-overlap-note': source(
    'Overlapping vs. Seaming (note of a supplier, restating highway practice)',
    'overlap by CBR of the soil',
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
    'Civil engineering course notes: proportioning of concrete mixes',
    'table of bulking by moisture',
    'memory',
  ),
  'flexible-pavement-guide': source(
    'AASHTO Guide for Design of Pavement Structures (1993)',
    'part II, flexible pavements: where the chart ends, and the growth of traffic',
    'memory',
  ),
  'flexible-pavement-sheet': source(
    'Flexible Pavement Design Calculation (working sheet that prints the equation of 1993)',
    'equation',
  ),
  'nomograph-notes': source(
    'AASHTO design nomograph lecture notes',
    'design example (subgrade of bearing ratio 3.5)',
    'memory',
  ),
  'layer-coefficient-sheet': source(
    'Transportation engineering exam sheet (layer-coefficient relations)',
    'problem 4 (read by machine)',
    'memory',
  ),
} as const satisfies Record<string, Source>;
