// Drawings of a plan with a hundred stakes on one string, each with its ground.
import { readFileSync } from 'node:fs';
import { drawDig, drawPlan, drawProfile, drawSection, drawStakeRow } from 'settline/drawing';
import { planJob } from 'settline/job';
import { compare } from './report.mjs';

const PACE = { warm: 1_200_000, batch: 60_000 };
const STAKES = 100;

/** The built-in site with so many stakes on its last string, side by side. */
function manyStakes() {
  const job = JSON.parse(
    readFileSync(new URL('../../examples/cedar-court.json', import.meta.url), 'utf8'),
  );
  const line = job.stringLines.at(-1);
  const stakeOf = (id) => job.stakes.find((stake) => stake.id === id);
  const [first, last] = [stakeOf(line.stakes[0]), stakeOf(line.stakes.at(-1))];
  const feet = (stake, axis) => Number.parseFloat(stake[axis]);
  const own = Array.from({ length: STAKES }, (_, k) => {
    const at = (axis) =>
      `${(feet(first, axis) + ((feet(last, axis) - feet(first, axis)) * k) / (STAKES - 1)).toFixed(4)} ft`;
    const ground = `${20 + (k % 7)} in`;
    return { id: `S${k}`, x: at('x'), y: at('y'), finish: first.finish, ground };
  });
  job.stakes = [...job.stakes.filter(({ id }) => !line.stakes.includes(id)), ...own];
  line.stakes = own.map(({ id }) => id);
  return job;
}

export function run() {
  const plan = planJob(manyStakes());
  const line = plan.stringLines.at(-1);
  const drawings = {
    drawProfile: () => drawProfile(plan, { system: 'us', string: line.id }),
    drawPlan: () => drawPlan(plan, { system: 'us' }),
    drawDig: () => drawDig(plan, { system: 'us', pavement: line.pavement }),
    drawSection: () => drawSection(plan, { system: 'us', pavement: line.pavement }),
    drawStakeRow: () => drawStakeRow(line, { system: 'us' }),
  };
  compare(
    `Drawings of a plan with ${STAKES} stakes on a string`,
    Object.entries(drawings).map(([name, draw]) => ({
      name,
      run: draw,
      result: () => `${(draw().length / 1000).toFixed(0)} kB`,
    })),
    PACE,
  );
}
