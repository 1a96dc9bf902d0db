import type * as planned from './planned.js';

/** What the job page asks of the library, loaded when the page is shown. */
export type Library = typeof planned;
