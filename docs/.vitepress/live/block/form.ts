import type { Issue } from 'settline/errors';
import { withValueAt, type Json, type JsonObject, type Path } from '../page/json-text.js';
import { makeElement } from '../page/make-element.js';
import type { Field } from './block.js';
import { flagElement, singleElement, type Control, type FormParts } from './form-fields.js';
import { rowsElement } from './form-rows.js';

/** A control with the path it edits, and the place for its faults. */
interface Wired {
  readonly path: Path;
  readonly control: Control;
  readonly faults: HTMLElement;
}

/** A form that edits options. */
export interface Form {
  readonly element: HTMLElement;
  /** Shows other options. */
  readonly show: (options: JsonObject) => void;
  /** Marks the fields that have faults. */
  readonly mark: (faults: readonly Issue[]) => void;
}

/** How much of a path another one shares from the start. */
const startsWith = (path: Path, start: Path): boolean =>
  start.length <= path.length && start.every((step, index) => step === path[index]);

/** The control of a fault: that of its field or of what the field stands in, else the first inside. */
const ownerOf = ({ path }: Issue, wired: readonly Wired[]): Wired | undefined =>
  wired.find((one) => startsWith(path, one.path)) ??
  (path.length > 0 ? wired.find((one) => startsWith(one.path, path)) : undefined);

function markAll(wired: readonly Wired[], faults: readonly Issue[]): void {
  const owned = faults.map((fault) => ({ fault, owner: ownerOf(fault, wired) }));
  for (const one of wired) {
    const own = owned.filter(({ owner }) => owner === one);
    one.faults.textContent = own.map(({ fault }) => fault.message).join(' ');
    if (own.length > 0) one.control.setAttribute('aria-invalid', 'true');
    else one.control.removeAttribute('aria-invalid');
  }
}

/** Makes the form of a block. `changed` gets the options after each edit. */
export function makeForm(fields: readonly Field[], changed: (options: JsonObject) => void): Form {
  const element = makeElement('div', { class: 'form' });
  let options: JsonObject = {};
  let wired: Wired[] = [];

  const parts: FormParts = {
    element,
    options: () => options,
    put: (path: Path, value: Json | undefined) => {
      options = withValueAt(options, path, value) as JsonObject;
      changed(options);
    },
    wire: (control, path) => {
      const id = `fault-${wired.length}`;
      const faults = makeElement('span', { class: 'fault', attributes: { id } });
      wired.push({ path, control, faults });
      return faults;
    },
    draw,
  };

  function draw(): void {
    wired = [];
    element.replaceChildren(
      ...fields.map((field) => {
        if (field.kind === 'rows') return rowsElement(field, parts);
        return field.kind === 'flag' ? flagElement(field, parts) : singleElement(field, parts);
      }),
    );
  }

  return {
    element,
    show: (given) => {
      options = given;
      draw();
    },
    mark: (faults) => {
      markAll(wired, faults);
    },
  };
}
