// A file that pages share: what every calculation needs. As many small ones it would take more bytes and
// more requests.

const QUANTITIES =
  /\/node_modules\/(?:decimal\.js|convert-units|leven)\/|\/src\/(?:units|input)\/|\/src\/(?:errors|attempt|capital|working)\.ts$/;

const groupOf = (id) => (QUANTITIES.test(id) ? 'quantities' : undefined);

/** The plugin for the build of the pages; the generator sets the file of its own modules. */
export const chunkGroups = () => ({
  name: 'chunk groups',
  outputOptions({ manualChunks, ...rest }) {
    if (typeof manualChunks !== 'function') return null;
    return { ...rest, manualChunks: (id, tools) => manualChunks(id, tools) ?? groupOf(id) };
  },
});
