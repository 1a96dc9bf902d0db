// Minifies the scripts that every page loads once more, by a slower tool that finds more.
import { minify } from 'terser';

const SHARED = /\/chunks\/(?:framework|quantities|theme)\.[^/]*\.js$/;

/** The plugin for the build of the pages. */
export const smallerScripts = () => ({
  name: 'smaller scripts',
  async generateBundle(_, bundle) {
    for (const chunk of Object.values(bundle)) {
      if (chunk.type !== 'chunk' || !SHARED.test(chunk.fileName)) continue;
      const { code } = await minify(chunk.code, { module: true, compress: { passes: 2 } });
      chunk.code = code;
    }
  },
});
