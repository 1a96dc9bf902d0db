// What stands for parts of the generator that no page needs: .config/site/unused-parts.mjs.
const nothing = () => null;

export { nothing as default, nothing as useCodeGroups, nothing as usePrefetch };
