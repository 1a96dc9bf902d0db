// Plane fit over many points: ours beside a matrix package and bare loops.
import { Matrix, QrDecomposition, solve } from 'ml-matrix';
import { fitPlane } from 'settline/geometry';
import { planeThrough } from 'settline/grading';
import { compare } from './report.mjs';

const SIDE = 300;
// floats hold all of it exactly: a grid of quarter metres, grades of 1/64 and 1/128, and a
// chequerboard of 1/256 m up and down, which leaves the plane of least squares where it is
const EXACT = { gradeX: -1 / 64, gradeY: 1 / 128, rms: 1 / 256 };

function grid(east, north) {
  const xyz = new Float64Array(3 * SIDE * SIDE);
  for (let i = 0, at = 0; i < SIDE; i += 1) {
    for (let j = 0; j < SIDE; j += 1, at += 3) {
      const [x, y] = [i / 4, j / 4];
      xyz[at] = east + x;
      xyz[at + 1] = north + y;
      xyz[at + 2] = 30 + EXACT.gradeX * x + EXACT.gradeY * y + ((i + j) % 2 ? -1 : 1) / 256;
    }
  }
  return xyz;
}

/** Two passes as anybody would write them: means, then sums about the means. */
function bareFit(xyz) {
  const n = xyz.length / 3;
  let mx = 0;
  let my = 0;
  let mz = 0;
  for (let i = 0; i < xyz.length; i += 3) {
    mx += xyz[i];
    my += xyz[i + 1];
    mz += xyz[i + 2];
  }
  mx /= n;
  my /= n;
  mz /= n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  let zz = 0;
  for (let i = 0; i < xyz.length; i += 3) {
    const x = xyz[i] - mx;
    const y = xyz[i + 1] - my;
    const z = xyz[i + 2] - mz;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z * z;
  }
  const det = xx * yy - xy * xy;
  const gradeX = (xz * yy - yz * xy) / det;
  const gradeY = (yz * xx - xz * xy) / det;
  return { gradeX, gradeY, rms: Math.sqrt((zz - gradeX * xz - gradeY * yz) / n) };
}

/** Reads everything and adds it up: what no fit can beat. */
function bareRead(xyz) {
  let sum = 0;
  for (let i = 0; i < xyz.length; i += 3) sum += xyz[i] + xyz[i + 1] + xyz[i + 2];
  return sum;
}

/** The matrices of a package, laid out beforehand: `1, x, y` and `z`, as given or about the middle. */
function matrices(xyz, [mx, my, mz]) {
  const n = xyz.length / 3;
  const [left, right] = [new Matrix(n, 3), new Matrix(n, 1)];
  for (let k = 0; k < n; k += 1) {
    left.set(k, 0, 1);
    left.set(k, 1, xyz[3 * k] - mx);
    left.set(k, 2, xyz[3 * k + 1] - my);
    right.set(k, 0, xyz[3 * k + 2] - mz);
  }
  return { left, right };
}

const gradesOf = (solution) => ({ gradeX: solution.get(1, 0), gradeY: solution.get(2, 0) });

const errorOf = (fit) => {
  const grades = Math.max(Math.abs(fit.gradeX - EXACT.gradeX), Math.abs(fit.gradeY - EXACT.gradeY));
  const rms =
    fit.rms === undefined ? '' : `, rms off ${Math.abs(fit.rms - EXACT.rms).toExponential(0)}`;
  return `grades off ${grades.toExponential(0)}${rms}`;
};

function at(title, east, north) {
  const xyz = grid(east, north);
  const about = matrices(xyz, [east + SIDE / 8, north + SIDE / 8, 30]);
  const plain = matrices(xyz, [0, 0, 0]);
  compare(`${title}, ${SIDE * SIDE} points`, [
    { name: 'settline fitPlane', run: () => fitPlane(xyz), result: errorOf },
    { name: 'bare two-pass loop', run: () => bareFit(xyz), result: errorOf },
    { name: 'bare read (floor)', run: () => bareRead(xyz) },
    {
      name: 'ml-matrix QR, centred by hand',
      run: () => gradesOf(new QrDecomposition(about.left).solve(about.right)),
      result: errorOf,
    },
    {
      name: 'ml-matrix SVD, as given',
      run: () => gradesOf(solve(plain.left, plain.right, true)),
      result: errorOf,
    },
  ]);
}

export function run() {
  at('Plane near the origin', 0, 0);
  at('Plane at 500 000 / 4 500 000 m', 500_000, 4_500_000);
  const few = [
    [0, 0, 30],
    [12, 0, 29.7],
    [12, 5, 29.585],
    [0, 5, 29.895],
    [6, 2.5, 29.8],
  ];
  const metres = (value) => ({ value, unit: 'm' });
  const points = few.map(([x, y, z]) => ({ x: metres(x), y: metres(y), z: metres(z) }));
  const xyz = Float64Array.from(few.flat());
  compare('Five fixed levels', [
    {
      name: 'settline planeThrough, exact',
      run: () => planeThrough({ points }),
      result: (plane) => plane.gradeX.to('percent').toString(),
    },
    {
      name: 'settline fitPlane, floats',
      run: () => fitPlane(xyz),
      result: (plane) => `${100 * plane.gradeX}`,
    },
  ]);
}
