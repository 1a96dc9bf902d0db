// A page with one element in it, as the address says: ?live=loads, ?example, ?job.
import { defineElements } from '../../../docs/.vitepress/live/index.js';

const EXAMPLE = `const base: unknown = lifts({ thickness: '8 in', maxLift: '3 in', compactedPerLoose: 0.8 });
(base as { count: number }).count //=> 3
planJob(job).stringLines.length //=> 3`;

const asked = new URLSearchParams(location.search);
const main = document.querySelector('main');
const live = asked.get('live');
const isAsked = (name: string): boolean => asked.get(name) !== null;

function made(): HTMLElement {
  if (live !== null) {
    const block = document.createElement('settline-live');
    block.setAttribute('name', live);
    if (isAsked('wait')) {
      block.setAttribute('wait', '');
      block.textContent = 'What is read without script.';
    }
    return block;
  }
  if (isAsked('job')) return document.createElement('settline-job');
  const example = document.createElement('settline-example');
  const code = document.createElement('pre');
  code.tabIndex = 0;
  code.textContent = asked.get('code') ?? EXAMPLE;
  example.append(code);
  return example;
}

main?.append(made());
void defineElements();
