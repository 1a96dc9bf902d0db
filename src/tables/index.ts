export {
  readPointTable,
  type PointTable,
  type PointTableOptions,
  type PointTableRows,
} from '../job/tables/read-point-table.js';
export type { PointColumn, PointTableKind } from '../job/tables/point-columns.js';
export type { TableDelimiter } from '../job/tables/split-table.js';
export type { DecimalMark } from '../job/tables/decimal-mark.js';
export { stakeTable, type StakeRow } from '../job/tables/stake-table.js';
export {
  cornerTable,
  type CornerRow,
  type CornerTable,
  type CornerTableOptions,
  type OffsetPoint,
  type OffsetPointInput,
} from '../job/tables/corner-table.js';
export { tableText, type TableTextOptions } from '../job/tables/table-text.js';
