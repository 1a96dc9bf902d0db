export type { BulkPoints } from './bulk-points.js';
export type { ResidualOptions } from './residuals.js';
export { fitLine, type LineFit } from './line/fit-line.js';
export { leaveOneOut, type LeaveOneOut } from './line/leave-one-out.js';
export { fitCircle, type CircleFit } from './circle/fit-circle.js';
export { fitPlane, type BulkPlane } from './plane/fit-plane.js';
export { ringArea } from './ring/ring-area.js';
export { ringMeasures, type RingMeasures } from './ring/ring-measures.js';
export { ringCrossing, type RingCrossing } from './ring/ring-crossing.js';
export { widenRing, type WidenedRing } from './ring/widen-ring.js';
export {
  surfaceVolumes,
  type SurfaceVolumes,
  type SurfaceVolumesOptions,
} from './surface/surface-volumes.js';
export type { DesignCorners, DesignPlane } from './surface/read-design.js';
export type { Depth } from './surface/tally.js';
export {
  scanStraightedge,
  type ScannedStraightedge,
  type ScanStraightedgeOptions,
} from './profile/scan-straightedge.js';
export type { BulkProfile } from './profile/flat-profile.js';
export { outlierCritical, type OutlierCriticalOptions } from './statistics/outlier-critical.js';
export { studentQuantile, type StudentQuantileOptions } from './statistics/student-quantile.js';
