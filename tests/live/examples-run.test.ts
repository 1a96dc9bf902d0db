import { afterAll, beforeAll, expect, test } from 'vitest';
import { LONGEST_RUN } from '../../docs/.vitepress/live/example/run-example.js';
import { overflow, seriousFindings, serveElements, type ServedSite } from './in-browser.js';

let site: ServedSite;
beforeAll(async () => {
  site = await serveElements();
});
afterAll(() => site.close());

/** The page of an example with this code in it. */
const withCode = (code: string): string => `?example&code=${encodeURIComponent(code)}`;
const LIFTS = "lifts({ thickness: '8 in', maxLift: '3 in', compactedPerLoose: 0.8 }).count //=> 3";

test('an example is read without its editor, and the library comes when it is asked for', async () => {
  const { page, context, faults } = await site.open(withCode(LIFTS));
  const workers: string[] = [];
  page.on('worker', (worker) => workers.push(worker.url()));
  await page.getByRole('button', { name: 'Edit and run' }).waitFor();
  expect(await page.getByText("lifts({ thickness: '8 in'").isVisible()).toBe(true);
  expect(workers).toEqual([]);
  await page.getByRole('button', { name: 'Edit and run' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('Every line gives what is written.').waitFor();
  expect(workers).toHaveLength(1);
  expect(await page.locator('.lines li').allTextContents()).toEqual([
    'line 1 gives 3 (as written)',
  ]);
  expect(faults).toEqual([]);
  await context.close();
});

test('types, imports and the built-in site are there, as in the test of the examples', async () => {
  const code = [
    "import { planJob, type JobPlan } from 'settline/job';",
    'const plan: JobPlan = planJob(job);',
    'plan.stringLines.map(({ id }) => id as string); //=> ["kerb", "fence", "garden"]',
    '(await Promise.resolve(plan.name)).length',
    '//=> 33',
  ].join('\n');
  const { page, context } = await site.open(withCode(code));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  expect(await page.locator('.lines li').allTextContents()).toEqual([
    "line 3 gives ['kerb', 'fence', 'garden'] (as written)",
    'line 5 gives 33 (as written)',
  ]);
  await context.close();
});

test('what is typed is run by keyboard, and a line that gives something else is told', async () => {
  const { page, context } = await site.open(withCode(LIFTS));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  const editor = page.getByLabel('Example code; Control and Enter runs it');
  await editor.fill(LIFTS.replace('8 in', '14 in'));
  await editor.press('Control+Enter');
  await page.getByText('One line gives another value than is written.').waitFor();
  expect(await page.locator('.lines li').textContent()).toBe('line 1 gives 5 (written: 3)');
  await page.getByRole('button', { name: 'Reset' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  expect(await editor.inputValue()).toBe(LIFTS);
  await context.close();
});

test('a refusal is shown with code, path, message and line', async () => {
  const code = `// a comment\n${LIFTS.replace("'8 in'", "'8'")}`;
  const { page, context } = await site.open(withCode(code));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('One fault.').waitFor();
  const fault = await page.locator('.lines li').textContent();
  expect(fault).toMatch(/^line 2: thickness: .*has no unit.* UNIT_MISSING$/);
  expect(await page.locator('.numbers .bad').allTextContents()).toEqual(['! 2']);
  await context.close();
});

test('a loop without an end is stopped, the page stays alive, and the next run works', async () => {
  const { page, context, faults } = await site.open(withCode(LIFTS));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  // from here on the time of the page runs only as far as the test lets it
  await page.clock.install({ time: 0 });
  await page.clock.pauseAt(1000);
  const editor = page.getByLabel('Example code; Control and Enter runs it');
  await editor.fill(`for (;;);\n${LIFTS}`);
  await editor.press('Control+Enter');
  await page.getByText('Running.').waitFor();
  expect(await page.evaluate(() => 6 * 7)).toBe(42);
  const stopped = page.getByText('Stopped after 3 seconds. Look for a loop that does not end.');
  await page.clock.runFor(LONGEST_RUN - 1);
  expect(await stopped.count()).toBe(0);
  await page.clock.runFor(1);
  await stopped.waitFor();
  await page.clock.resume();
  await editor.fill(LIFTS);
  await editor.press('Control+Enter');
  await page.getByText('Every line gives what is written.').waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('an example has no way out of the page', async () => {
  const code =
    "[typeof fetch, typeof WebSocket, typeof importScripts] //=> ['undefined', 'undefined', 'undefined']";
  const { page, context } = await site.open(withCode(code));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  await context.close();
});

test('a link opens the code that was typed, and does not run it by itself', async () => {
  const { page, context } = await site.open(withCode(LIFTS));
  await page.getByRole('button', { name: 'Edit and run' }).click();
  const editor = page.getByLabel('Example code; Control and Enter runs it');
  const typed = LIFTS.replace('3 in', '4 in').replace('//=> 3', '//=> 2');
  await editor.fill(typed);
  await page.reload();
  expect(await editor.inputValue()).toBe(typed);
  expect(await page.locator('.answer').textContent()).toBe('');
  await page.getByRole('button', { name: 'Run', exact: true }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  await context.close();
});

test.each([
  [1280, 'light'],
  [360, 'dark'],
] as const)('at %i px, %s: no overflow, nothing serious for axe', async (width, scheme) => {
  const { page, context, faults } = await site.open('?example', { width, scheme });
  await page.getByRole('button', { name: 'Edit and run' }).click();
  await page.getByText('Every line gives what is written.').waitFor();
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await seriousFindings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});
