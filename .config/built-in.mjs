// Packages that are built into the files of ours: `zod` for the few of its files that a schema needs
// (all of them take longer to load than a job takes to plan), the others because they are ES modules
// only. Their licences go into THIRD-PARTY-NOTICES.md.
export const BUILT_IN = ['clipper2-ts', 'leven', 'robust-predicates', 'zod'];
