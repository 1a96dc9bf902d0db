import { BLOCKS, isBlockName } from '../blocks/index.js';
import { makeButton, makeElement } from '../page/make-element.js';
import { stateInHash } from '../page/state-in-hash.js';
import { styledShadow } from '../page/styles.js';

/**
 * `<settline-live name="loads">`: a form in front of one calculation. What stands inside the element
 * is shown until the form is there, and to readers without script. With `wait` it is loaded when a reader
 * comes to it; with `short` the working is folded.
 */
export class SettlineLive extends HTMLElement {
  #isMade = false;

  connectedCallback(): void {
    if (this.#isMade) return;
    const name = this.getAttribute('name') ?? '';
    if (!isBlockName(name)) return;
    this.#isMade = true;
    const root = styledShadow(this);
    root.append(makeElement('slot'));
    const stateName = this.id === '' ? name : this.id;
    const load = (): void => {
      void Promise.all([BLOCKS[name](), import('./block-view.js')]).then(
        ([{ block }, { makeBlock }]) => {
          makeBlock(root, block, { name: stateName, isShort: this.hasAttribute('short') });
        },
      );
    };
    if (!this.hasAttribute('wait') || stateInHash(stateName) !== undefined) load();
    else loadOnInterest(this, root, load);
  }
}

/** Loads a block when a reader comes to it: with the pointer, the keyboard or a finger. */
function loadOnInterest(host: HTMLElement, root: ShadowRoot, load: () => void): void {
  let isAsked = false;
  const once = (): void => {
    if (!isAsked) load();
    isAsked = true;
  };
  const open = makeButton('Change the numbers', once);
  root.append(makeElement('div', { class: 'bar', children: [open] }));
  host.addEventListener('pointerenter', once);
}
