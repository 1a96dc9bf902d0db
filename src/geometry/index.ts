export type { BulkPoints, ResidualOptions } from './flat-points.js';
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
  type Depth,
  type DesignCorners,
  type DesignPlane,
  type SurfaceVolumes,
} from './surface/surface-volumes.js';
export { scanStraightedge, type ScannedStraightedge } from './profile/scan-straightedge.js';
export type { BulkProfile } from './profile/flat-profile.js';
export { outlierCritical, studentQuantile } from './statistics/student-quantile.js';
