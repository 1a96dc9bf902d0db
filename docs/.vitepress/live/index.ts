import { SettlineLive } from './block/settline-live.js';
import { SettlineExample } from './example/settline-example.js';
import { SettlineJob } from './job/settline-job.js';

/** Defines the elements of the pages, once. Call it in the browser, when the page is mounted. */
export function defineElements(): void {
  define('settline-live', SettlineLive);
  define('settline-example', SettlineExample);
  define('settline-job', SettlineJob);
}

const define = (name: string, element: CustomElementConstructor): void => {
  if (customElements.get(name) === undefined) customElements.define(name, element);
};
