// The list beside the pages of functions: what one folder of the library has.

/** The list of a folder, from the names of its functions. */
function sidebarOf(folder, functions) {
  const own = functions.split(' ').filter((name) => name !== '');
  const items = own.map((name) => ({ text: name, link: `/api/${folder}/${name}` }));
  return [
    { text: 'Reference', items: [{ text: 'All functions', link: '/api/' }] },
    {
      text: folder === 'settline' ? folder : `settline/${folder}`,
      items: [...items, { text: 'Types', link: `/api/${folder}/types` }],
    },
  ];
}

/** The settings of the theme with a list for each folder. */
export function withFolderSidebars({ folders, sidebar, ...rest }) {
  const own = Object.entries(folders).map(([folder, functions]) => [
    `/api/${folder}/`,
    sidebarOf(folder, functions),
  ]);
  return { ...rest, sidebar: { ...Object.fromEntries(own), ...sidebar } };
}
