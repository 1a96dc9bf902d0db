// Links from a page to files of the repository lead to the copies that the site keeps of them.

/** From a page one folder down, the root lies two folders up in the repository and one in the site. */
export const inSite = (href) =>
  href.replace(/^\.\.\/\.\.\/(?=examples\/|job\.schema\.json$)/, '../');

/** Teaches a Markdown renderer to follow them. */
export function repositoryLinks(markdown) {
  markdown.core.ruler.push('repository_links', ({ tokens }) => {
    for (const child of tokens.flatMap(({ children }) => children ?? [])) {
      const href = child.type === 'link_open' ? child.attrGet('href') : null;
      if (href !== null) child.attrSet('href', inSite(href));
    }
  });
}
