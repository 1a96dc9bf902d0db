// Refuses a page without a title or a description.
import { readPages } from './pages.mjs';

export function checkPages() {
  const bare = readPages().filter(({ title, description }) => title === '' || description === '');
  if (bare.length === 0) return;
  throw new Error(
    `pages without a title or a description: ${bare.map(({ path }) => path).join(', ')}`,
  );
}
