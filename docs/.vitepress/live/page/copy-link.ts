import { makeButton, makeElement } from './make-element.js';

/** A button that copies a link; where the browser refuses, the link is shown to be copied by hand. */
export function copyLinkButton(link: () => string): HTMLElement {
  const said = makeElement('span', { class: 'said', attributes: { role: 'status' } });
  const button = makeButton('Copy link', () => {
    void copy(link(), said);
  });
  return makeElement('span', { class: 'copy', children: [button, said] });
}

async function copy(link: string, said: HTMLElement): Promise<void> {
  try {
    await navigator.clipboard.writeText(link);
    said.textContent = 'Link copied.';
  } catch {
    const field = makeElement('input', {
      attributes: { type: 'text', readonly: true, value: link, 'aria-label': 'Link to copy' },
    });
    said.replaceChildren(field);
    field.select();
  }
}
