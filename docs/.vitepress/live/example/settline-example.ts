import { makeButton, makeElement } from '../page/make-element.js';
import { stateInHash } from '../page/state-in-hash.js';
import { styledShadow } from '../page/styles.js';
import { warmUp } from './run-example.js';

/**
 * `<settline-example>`: the code inside it, readable without script, can be edited and run
 * in place. Each line with `//=>` shows what it gives now.
 */
export class SettlineExample extends HTMLElement {
  #isMade = false;

  connectedCallback(): void {
    if (this.#isMade) return;
    this.#isMade = true;
    const root = styledShadow(this);
    const source = (this.querySelector('pre code') ?? this.querySelector('pre') ?? this)
      .textContent;
    const code = source.replace(/^\n+|\s+$/g, '');
    const name = this.id === '' ? `example-${placeInPage(this)}` : this.id;
    const state = stateInHash(name);
    const open = makeButton('Edit and run', () => {
      void import('./editor.js').then(({ openEditor }) => {
        openEditor(root, { code, state: code, name }).run();
      });
    });
    open.addEventListener('focus', () => {
      warmUp().catch(() => undefined);
    });
    root.append(makeElement('slot'), makeElement('div', { class: 'bar', children: [open] }));
    if (state === undefined) return;
    void import('./editor.js').then(({ openEditor }) => openEditor(root, { code, state, name }));
  }
}

/** Which example of the page this is, counted from 1: a link finds it again. */
const placeInPage = (example: Element): number =>
  [...document.querySelectorAll('settline-example')].indexOf(example) + 1;
