// Fewer files to load: the bundler makes a chunk for every set of entries that share a module, down to
// a few lines. Here small chunks are laid together. An entry that needs one part of such a chunk is
// told to bring the rest along; whoever bundles the package for an app drops it again.
import { build } from 'esbuild';
import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';

/** Chunks of fewer bytes are laid together with another one ... */
const SMALL = 12_000;
/** ... unless an entry would then load more than this, in all, that it has no use for. */
const MOST_EXTRA = 20_000;

/** Modules and their sizes in the build, with what each imports; packages left out have no end. */
async function graphOf(entry, { external, plugins }) {
  const { metafile } = await build({
    entryPoints: entry,
    outdir: 'dist',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    write: false,
    metafile: true,
    external,
    plugins,
  });
  const sizes = new Map(external.map((name) => [name, Infinity]));
  for (const name of Object.keys(metafile.inputs)) sizes.set(name, 0);
  for (const { inputs } of Object.values(metafile.outputs)) {
    for (const [name, { bytesInOutput }] of Object.entries(inputs)) sizes.set(name, bytesInOutput);
  }
  const imports = new Map(
    Object.entries(metafile.inputs).map(([name, one]) => [
      name,
      one.imports.map(({ path }) => path).filter((path) => sizes.has(path)),
    ]),
  );
  return { sizes, imports };
}

/** All that some modules load. */
function reachOf(names, imports, reached = new Set()) {
  for (const name of names) {
    if (reached.has(name)) continue;
    reached.add(name);
    reachOf(imports.get(name) ?? [], imports, reached);
  }
  return reached;
}

/** The chunks: modules that the same entries reach. */
function chunksOf(reach, sizes) {
  const chunks = new Map();
  for (const name of sizes.keys()) {
    const users = [...reach.keys()].filter((one) => reach.get(one).has(name));
    if (users.length === 0 || sizes.get(name) === Infinity) continue;
    const chunk = chunks.get(users.join()) ?? { users, modules: [], size: 0 };
    chunk.modules.push(name);
    chunk.size += sizes.get(name);
    chunks.set(users.join(), chunk);
  }
  return [...chunks.values()];
}

/**
 * What the entries would load on top if two chunks were one, all together; undefined if one of them
 * would then bring too much along.
 */
function extraOf(one, other, { own, reach, imports, sizes }) {
  const all = reachOf([...one.modules, ...other.modules], imports);
  let sum = 0;
  for (const user of new Set([...one.users, ...other.users])) {
    const more = [...all].filter((name) => !reach.get(user).has(name));
    const extra = more.reduce((bytes, name) => bytes + sizes.get(name), 0);
    const brought = [...reach.get(user)].filter((name) => !own.get(user).has(name));
    const inAll = brought.reduce((bytes, name) => bytes + sizes.get(name), extra);
    if (inAll > MOST_EXTRA) return undefined;
    sum += extra;
  }
  return sum;
}

/** The chunk that costs the least to lay together with another. */
function cheapest(one, chunks, graph) {
  let best;
  for (const other of chunks) {
    if (other === one || other.users.length < 2) continue;
    const extra = extraOf(one, other, graph);
    if (extra !== undefined && (best === undefined || extra < best.extra)) best = { other, extra };
  }
  return best?.other;
}

/** For each entry the modules that it brings along without any use for them. */
async function broughtAlong(entry, options) {
  const { sizes, imports } = await graphOf(entry, options);
  const reachedBy = (name) => [name, reachOf([name], imports)];
  const own = new Map(Object.values(entry).map(reachedBy));
  const reach = new Map(Object.values(entry).map(reachedBy));
  const done = new Set();
  for (;;) {
    const chunks = chunksOf(reach, sizes);
    const [one] = chunks
      .filter(({ size, users }) => size < SMALL && users.length > 1 && !done.has(users.join()))
      .sort((a, b) => a.size - b.size);
    if (one === undefined) break;
    const other = cheapest(one, chunks, { own, reach, imports, sizes });
    if (other === undefined) {
      done.add(one.users.join());
      continue;
    }
    for (const user of new Set([...one.users, ...other.users])) {
      reachOf([...one.modules, ...other.modules], imports, reach.get(user));
    }
  }
  const beyond = ([name, all]) => [name, [...all].filter((one) => !own.get(name).has(one))];
  return new Map([...reach].map(beyond));
}

/** A plugin for esbuild that lays small chunks together; it goes before all others. */
export async function fewerChunks(entry, options) {
  const along = await broughtAlong(entry, options);
  return {
    name: 'fewer chunks',
    setup({ onLoad }) {
      onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => {
        const more = along.get(relative('.', path).replaceAll('\\', '/'));
        if (more === undefined) return undefined;
        const lines = more.map((name) => `import ${JSON.stringify(resolve(name))};`);
        return { contents: [readFileSync(path, 'utf8'), ...lines].join('\n'), loader: 'ts' };
      });
    },
  };
}
