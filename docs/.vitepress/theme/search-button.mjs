// The button that opens the search; the keys / and Ctrl K do so too.
import { h } from 'vue';

const glass = () =>
  h('svg', { viewBox: '0 0 16 16', width: 16, height: 16, 'aria-hidden': 'true' }, [
    h('path', { d: 'M11 7a4 4 0 1 1-8 0a4 4 0 1 1 8 0M10 10l4 4' }),
  ]);

export default () =>
  h(
    'button',
    { type: 'button', class: 'site-search', title: 'Search the guides and functions (/)' },
    [glass(), h('span', 'Search')],
  );
