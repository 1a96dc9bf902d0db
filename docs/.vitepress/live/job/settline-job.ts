import { styledShadow } from '../page/styles.js';
import { makeElement } from '../page/make-element.js';
import { stateInHash } from '../page/state-in-hash.js';
import { SITES } from './example-sites.js';
import { keptJob, LINK_NAME, type KeptJob } from './kept-job.js';
import { unpackText } from './packed-text.js';

/**
 * `<settline-job>`: a job file to paste or edit, its faults, sheet, drawings, orders and working. What
 * stands inside the element is shown until the page is ready, and to readers without script.
 */
export class SettlineJob extends HTMLElement {
  #isMade = false;

  connectedCallback(): void {
    if (this.#isMade) return;
    this.#isMade = true;
    const root = styledShadow(this);
    root.append(makeElement('slot'));
    const parts = [import('./job-page.js'), import('./planned.js'), startingJob()] as const;
    void Promise.all(parts).then(([{ makeJobPage }, library, start]) => {
      makeJobPage(root, library, start);
    });
  }
}

/** What a link holds, else what was kept, else the first example site. */
async function startingJob(): Promise<KeptJob> {
  const kept = keptJob();
  const packed = stateInHash(LINK_NAME);
  const linked = packed === undefined ? undefined : await unpackText(packed);
  if (linked !== undefined && linked !== kept?.text) {
    return { text: linked, readings: '', system: kept?.system ?? 'us' };
  }
  if (kept !== undefined) return kept;
  const { default: text } = await SITES['cedar-court'].load();
  return { text, readings: '', system: 'us' };
}
