// The line under a page that leads to its copy in Markdown, and to the licences.
import { useData, withBase } from 'vitepress';
import { defineComponent, h } from 'vue';

export const PageCopy = defineComponent({
  setup() {
    const { page } = useData();
    return () =>
      h('p', { class: 'page-copy' }, [
        h(
          'a',
          { href: withBase(`/${page.value.relativePath}`), target: '_self' },
          'This page as Markdown',
        ),
        ', ',
        h('a', { href: withBase('/licences.txt'), target: '_self' }, 'licences of its parts'),
      ]);
  },
});
