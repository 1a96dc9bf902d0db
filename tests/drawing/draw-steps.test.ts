import { describe, expect, test } from 'vitest';
import { drawSteps } from 'settline/drawing';
import { workSteps } from 'settline/job';
import { expectFault } from '../faults.js';
import { PLANS } from './drawn-plans.js';
import { elementsOf, pictureOf, readXml, textsOf } from './read-svg.js';

describe.each(PLANS.map((plan) => ({ name: plan.name, plan })))('$name', ({ plan }) => {
  const steps = workSteps(plan);
  const root = readXml(drawSteps(steps, { system: 'us', narrow: true }));
  const picture = pictureOf(root);

  test('has every step with its number, in their order', () => {
    const all = textsOf(root, 'step').join(' ');
    let at = -1;
    steps.forEach(({ title }, index) => {
      const found = all.indexOf(`${index + 1}. ${title}`);
      expect(found).toBeGreaterThan(at);
      at = found;
    });
  });

  test('has a double frame with the word HOLD for each hold point', () => {
    const holds = steps.flatMap(({ holdPoints }) => holdPoints);
    const frames = elementsOf(picture, 'rect').filter(
      ({ attributes }) => attributes['class'] === 'hold-frame',
    );
    expect(frames).toHaveLength(holds.length);
    const words = textsOf(root, 'hold').join(' ');
    for (const { who, note } of holds) expect(words).toContain(`HOLD: ${who} signs. ${note}`);
    expect(elementsOf(root, 'desc')[0]?.text).toContain(
      `${steps.length} steps, ${holds.length} hold points.`,
    );
  });

  test('names the steps that a step waits for, where that is not the one above', () => {
    const words = elementsOf(picture, 'text').map(({ text }) => text);
    const numbers = new Map(steps.map(({ id }, index) => [id, index + 1]));
    const elsewhere = steps.flatMap(({ before }, index) =>
      before.flatMap(({ step }) => {
        const number = step === null ? undefined : numbers.get(step);
        return number === undefined || number === index ? [] : [number];
      }),
    );
    expect(elsewhere.length).toBeGreaterThan(0);
    for (const number of elsewhere) {
      expect(words.join(' ')).toMatch(new RegExp(`after steps? (?:\\d+, )*${number}\\b`));
    }
  });
});

test('refuses what is no list of steps', () => {
  const [plan] = PLANS;
  if (plan === undefined) expect.unreachable();
  const [step] = workSteps(plan);
  if (step === undefined) expect.unreachable();
  expectFault(() => drawSteps([], { system: 'us' }), 'EMPTY_LIST');
  expectFault(() => drawSteps(step as never, { system: 'us' }), 'WRONG_TYPE');
  expectFault(() => drawSteps([{ ...step }], { system: 'us' }), 'WRONG_TYPE');
});

test('one step and one hold point are counted as such', () => {
  const [plan] = PLANS;
  const steps = plan === undefined ? [] : workSteps(plan);
  const described = (shown: typeof steps) =>
    elementsOf(readXml(drawSteps(shown, { system: 'us' })), 'desc')[0]?.text;
  const held = steps.filter(({ holdPoints }) => holdPoints.length === 1).slice(0, 1);
  expect(described(held)).toMatch(/^1 step, 1 hold point\. /);
  const free = steps.filter(({ holdPoints }) => holdPoints.length === 0).slice(0, 2);
  expect(described(free)).toMatch(/^2 steps, 0 hold points\. /);
});
