import type { Length } from '../../units/quantity.js';

/** Height of a string above finished grade: its own, or else that of the job. Internal. */
export const heightOf = <J extends { readonly stringHeight?: Length | undefined }>(
  job: J,
  line: { readonly height?: Length | undefined },
): Length | J['stringHeight'] => line.height ?? job.stringHeight;
