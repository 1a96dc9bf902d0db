// Line and circle fits of a million points, beside a matrix package and bare loops.
import { EigenvalueDecomposition, Matrix, SingularValueDecomposition, solve } from 'ml-matrix';
import { fitCircle, fitLine, leaveOneOut } from 'settline/geometry';
import { compare, compareGrowth, printTable } from './report.mjs';

const COUNT = 1_000_000;
/** The matrix package takes long. */
const SOME = 100_000;
const EAST = 500_000;
const NORTH = 4_500_000;

/** Numbers from 0 to 1 that look random and are the same in every run. */
function sequence(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Stakes along a slanted line of 100 m, a few millimetres off. */
function linePoints(count) {
  const next = sequence(7);
  const xy = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    const [station, offset] = [100 * next() - 50, 0.01 * (next() - 0.5)];
    xy[2 * i] = EAST + 0.8 * station - 0.6 * offset;
    xy[2 * i + 1] = NORTH + 0.6 * station + 0.8 * offset;
  }
  return xy;
}

/** Points along a kerb that turns 80 degrees on 6 m, a few millimetres off. */
function arcPoints(count) {
  const next = sequence(11);
  const xy = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    const angle = 1.4 * next();
    const radius = 6 + 0.01 * (next() - 0.5);
    xy[2 * i] = EAST + radius * Math.cos(angle);
    xy[2 * i + 1] = NORTH + radius * Math.sin(angle);
  }
  return xy;
}

/** The least that a line fit can do: one loop for the mean, one for the moments. */
function twoPassLine(xy) {
  const count = xy.length / 2;
  let x = 0;
  let y = 0;
  for (let i = 0; i < xy.length; i += 2) {
    x += xy[i];
    y += xy[i + 1];
  }
  x /= count;
  y /= count;
  let a = 0;
  let b = 0;
  let c = 0;
  for (let i = 0; i < xy.length; i += 2) {
    const dx = xy[i] - x;
    const dy = xy[i + 1] - y;
    a += dx * dx;
    b += dx * dy;
    c += dy * dy;
  }
  return Math.atan2(2 * b, a - c) / 2;
}

/** A line fit with the residuals too, as ours gives them. */
function twoPassLineWithResiduals(xy, residuals) {
  const angle = twoPassLine(xy);
  const count = xy.length / 2;
  const ux = Math.cos(angle);
  const uy = Math.sin(angle);
  let x = 0;
  let y = 0;
  for (let i = 0; i < xy.length; i += 2) {
    x += xy[i];
    y += xy[i + 1];
  }
  x /= count;
  y /= count;
  for (let i = 0; i < count; i += 1) {
    residuals[i] = ux * (xy[2 * i + 1] - y) - uy * (xy[2 * i] - x);
  }
  return angle;
}

function centred(xy) {
  const count = xy.length / 2;
  const rows = new Matrix(count, 2);
  let x = 0;
  let y = 0;
  for (let i = 0; i < count; i += 1) {
    x += xy[2 * i];
    y += xy[2 * i + 1];
  }
  for (let i = 0; i < count; i += 1) {
    rows.set(i, 0, xy[2 * i] - x / count);
    rows.set(i, 1, xy[2 * i + 1] - y / count);
  }
  return rows;
}

function svdLine(xy) {
  const { rightSingularVectors: v } = new SingularValueDecomposition(centred(xy), {
    computeLeftSingularVectors: false,
  });
  return Math.atan(v.get(1, 0) / v.get(0, 0));
}

function eigenLine(xy) {
  const rows = centred(xy);
  const moments = rows.transpose().mmul(rows);
  const { eigenvectorMatrix: v } = new EigenvalueDecomposition(moments, { assumeSymmetric: true });
  return Math.atan(v.get(1, 1) / v.get(0, 1));
}

/** The least that a circle fit can do: two loops with a square root a point. */
function twoPassCircle(xy) {
  const x0 = xy[0] - 6;
  const y0 = xy[1];
  let sum = 0;
  for (let pass = 0; pass < 2; pass += 1) {
    for (let i = 0; i < xy.length; i += 2) {
      const dx = xy[i] - x0;
      const dy = xy[i + 1] - y0;
      sum += Math.sqrt(dx * dx + dy * dy);
    }
  }
  return sum / xy.length;
}

/** A circle by the matrix package: the linear equation by SVD, then Gauss-Newton steps by SVD. */
function svdCircle(xy, steps) {
  const count = xy.length / 2;
  const [x0, y0] = [xy[0], xy[1]];
  const rows = new Matrix(count, 3);
  const right = new Matrix(count, 1);
  for (let i = 0; i < count; i += 1) {
    const dx = xy[2 * i] - x0;
    const dy = xy[2 * i + 1] - y0;
    rows.set(i, 0, 2 * dx);
    rows.set(i, 1, 2 * dy);
    rows.set(i, 2, 1);
    right.set(i, 0, dx * dx + dy * dy);
  }
  const [[cx], [cy], [k]] = solve(rows, right, true).to2DArray();
  let [x, y, r] = [cx, cy, Math.sqrt(k + cx * cx + cy * cy)];
  for (let step = 0; step < steps; step += 1) {
    for (let i = 0; i < count; i += 1) {
      const dx = xy[2 * i] - x0 - x;
      const dy = xy[2 * i + 1] - y0 - y;
      const distance = Math.sqrt(dx * dx + dy * dy);
      rows.set(i, 0, dx / distance);
      rows.set(i, 1, dy / distance);
      rows.set(i, 2, 1);
      right.set(i, 0, distance - r);
    }
    const [[mx], [my], [mr]] = solve(rows, right, true).to2DArray();
    x += mx;
    y += my;
    r += mr;
  }
  return r;
}

const angleText = (angle) => `${angle.toFixed(15)} rad`;
const radiusText = (radius) => `${radius.toFixed(12)} m`;

/** Error of each fit on points that lie exactly on a figure, far from the origin. */
function accuracy() {
  const exact = new Float64Array(2 * 1001);
  for (let i = 0; i <= 1000; i += 1) {
    exact[2 * i] = EAST + i * 0.25;
    exact[2 * i + 1] = NORTH + i * 0.1875;
  }
  const slope = Math.atan(0.75);
  const off = (angle) => Math.abs(angle - slope).toExponential(1);
  const { direction } = fitLine(exact);
  printTable('Error of the direction on 1001 exact points at 500 000 / 4 500 000 m [rad]', [
    ['', 'error'],
    ['settline', off(Math.atan2(direction[1], direction[0]))],
    ['matrix SVD, centred', off(svdLine(exact))],
    ['matrix eigen, centred', off(eigenLine(exact))],
    ['bare two-pass loop', off(twoPassLine(exact))],
  ]);
}

export function run() {
  accuracy();
  const line = linePoints(SOME);
  const residuals = new Float64Array(SOME);
  const into = { residualsInto: residuals };
  const angleOf = ({ direction: [x, y] }) => Math.atan(y / x);
  compare(`Line through ${SOME} points`, [
    {
      name: 'settline fitLine, residuals into an array',
      run: () => angleOf(fitLine(line, into)),
      result: angleText,
    },
    {
      name: 'settline fitLine, new residuals',
      run: () => angleOf(fitLine(line)),
      result: angleText,
    },
    {
      name: 'bare two-pass loop, with residuals',
      run: () => twoPassLineWithResiduals(line, residuals),
      result: angleText,
    },
    {
      name: 'bare two-pass loop, direction alone',
      run: () => twoPassLine(line),
      result: angleText,
    },
    {
      name: 'matrix eigen of the moments, direction alone',
      run: () => eigenLine(line),
      result: angleText,
    },
    { name: 'matrix SVD, direction alone', run: () => svdLine(line), result: angleText },
  ]);
  compareGrowth('A line fit with residuals', [1e3, 1e4, 1e5, COUNT], (count) => {
    const some = linePoints(count);
    const room = new Float64Array(count);
    return [
      { name: 'settline fitLine', run: () => fitLine(some, { residualsInto: room }).rms },
      { name: 'bare two-pass loop', run: () => twoPassLineWithResiduals(some, room) },
    ];
  });
  const arc = arcPoints(SOME);
  compare(`Circle through ${SOME} points`, [
    {
      name: 'settline fitCircle, residuals into an array',
      run: () => fitCircle(arc, into).radius,
      result: radiusText,
    },
    {
      name: 'settline fitCircle, new residuals',
      run: () => fitCircle(arc).radius,
      result: radiusText,
    },
    { name: 'bare two-pass loop (no fit: reads and takes roots)', run: () => twoPassCircle(arc) },
    {
      name: 'matrix SVD, the linear equation alone',
      run: () => svdCircle(arc, 0),
      result: radiusText,
    },
    {
      name: 'matrix SVD and 2 Gauss-Newton steps',
      run: () => svdCircle(arc, 2),
      result: radiusText,
    },
  ]);
  const some = line.subarray(0, 2 * 1000);
  compare('Leave out each of 1000 points in turn', [
    { name: 'settline leaveOneOut', run: () => leaveOneOut(some).worst, result: String },
    {
      name: 'settline fitLine of the others, each time',
      run: () => refitted(some),
      result: String,
    },
  ]);
}

/** The long way: a fit of all others for each point. */
function refitted(xy) {
  const count = xy.length / 2;
  const others = new Float64Array(xy.length - 2);
  let worst = 0;
  let most = 0;
  for (let i = 0; i < count; i += 1) {
    others.set(xy.subarray(0, 2 * i));
    others.set(xy.subarray(2 * i + 2), 2 * i);
    const { centroid, direction, rms } = fitLine(others);
    const off =
      direction[0] * (xy[2 * i + 1] - centroid[1]) - direction[1] * (xy[2 * i] - centroid[0]);
    if (Math.abs(off / rms) > most) {
      worst = i;
      most = Math.abs(off / rms);
    }
  }
  return worst;
}
