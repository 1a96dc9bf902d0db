// An example that shows its results becomes `<settline-example>`: it reads well without script, and
// the element of that name makes it editable. `job` names the site that stands for `job` in it.
import { publicNames } from '../../collect-examples.mjs';
import { usesSite } from '../example-text.mjs';

let names;

/** Whether a block of code is an example that shows results, and that a page can run. */
const isExample = ({ info, content }) =>
  info.trim() === 'ts' && content.includes('//=>') && !content.includes("'settline/node-threads'");

/** Teaches a Markdown renderer to wrap examples. */
export function editableExamples(markdown) {
  const { fence } = markdown.renderer.rules;
  markdown.renderer.rules.fence = (tokens, index, ...rest) => {
    const html = fence(tokens, index, ...rest);
    if (!isExample(tokens[index])) return html;
    names ??= publicNames();
    const job = usesSite(tokens[index].content, names) ? ' job="cedar-court"' : '';
    return `<settline-example${job}>${html}</settline-example>\n`;
  };
}
