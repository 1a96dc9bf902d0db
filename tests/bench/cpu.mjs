// Times code in processor time of this process (collector and compiler included), so that others who
// use the machine do not count.

/** Processor time that this process has used, in microseconds. */
export function cpu() {
  const { user, system } = process.cpuUsage();
  return user + system;
}

let ofChildren = 0;

/** Counts the processor time of a process that was started and has ended, in microseconds. */
export function addChild(microseconds) {
  ofChildren += microseconds;
}

/** Processor time of this process and of those that it started. */
export const cpuOfAll = () => cpu() + ofChildren;

/** Long enough that the clock of the processor is fine enough. */
const BATCH = 20_000;
/** Past the tiers of the compiler. */
const WARM = 100_000;
const ROUNDS = 7;
/** Calls longer than this take part in fewer rounds. */
const LONG = 150_000;
const ROUNDS_OF_LONG = 2;

/** A loop of its own for each contender: in a shared one, calls would slow each other down. */
const loopOf = (run) =>
  new Function(
    'run',
    `const held = { last: undefined };
     return (from, to) => { for (let k = from; k < to; k += 1) held.last = run(k); return held; };`,
  )(run);

function time(loop, from, count) {
  const start = cpu();
  loop(from, from + count);
  return cpu() - start;
}

/** How many calls fill a batch; finding out warms the code up. */
function calibrate(loop, { batch, warm }) {
  let count = 1;
  let used = time(loop, 0, 1);
  let all = used;
  while (used < batch || all < warm) {
    const factor = Math.min(10, (1.2 * batch) / Math.max(used, 1));
    if (used < batch) count = Math.ceil(count * Math.max(1.5, factor));
    used = time(loop, 0, count);
    all += used;
  }
  return { count, used };
}

const sorted = (values) => [...values].sort((a, b) => a - b);

/** The middle one of some numbers. */
export const median = (values) => sorted(values)[values.length >> 1];

/**
 * Measures functions in rotation: each round calls all of them, each round from another one on, so
 * that a slow spell of the machine meets all alike. `run` gets the number of the call, to vary what it
 * works on. Code of many functions needs a longer `warm` and `batch`, in microseconds. Gives the median
 * and the least time of one call in nanoseconds.
 */
export function inRotation(runs, { batch = BATCH, warm = WARM } = {}) {
  const contenders = runs.map((run) => {
    const loop = loopOf(run);
    return { loop, ...calibrate(loop, { batch, warm }), samples: [] };
  });
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let k = 0; k < contenders.length; k += 1) {
      const { loop, count, used, samples } = contenders[(k + round) % contenders.length];
      if (round >= ROUNDS_OF_LONG && used / count > LONG) continue;
      samples.push((1000 * time(loop, round * count, count)) / count);
    }
  }
  return contenders.map(({ samples }) => ({ median: median(samples), least: sorted(samples)[0] }));
}

/** Median time of one call of a function, in nanoseconds. */
export const nanoseconds = (run) => inRotation([run])[0].median;
