// `<checked-filter>`: shows the figures of one publication, or those that check one folder. The
// choice stands in the address, so a link keeps it.

const sections = () => [...document.querySelectorAll('section.checked')];
const foldersOf = (section) => section.dataset.folders.split(' ');

/** A list to choose from, with a label; the first entry chooses nothing. */
function choice(label, name, entries, onChange) {
  const select = document.createElement('select');
  select.name = name;
  select.append(new Option('all', ''), ...entries.map(([value, text]) => new Option(text, value)));
  select.addEventListener('change', onChange);
  const element = document.createElement('label');
  element.append(label, select);
  return { element, select };
}

const counted = (count, word) => `${count} ${word}${count === 1 ? '' : 's'}`;

class CheckedFilter extends HTMLElement {
  connectedCallback() {
    if (this.choices !== undefined) return;
    const all = sections();
    const titles = all.map((one) => [
      one.dataset.source,
      one.querySelector('h2').firstChild.textContent.trim(),
    ]);
    titles.sort(([, a], [, b]) => (a < b ? -1 : 1));
    const folders = [...new Set(all.flatMap(foldersOf))].sort();
    const show = () => this.show();
    this.choices = [
      choice('Publication', 'source', titles, show),
      choice(
        'Folder of the library',
        'folder',
        folders.map((name) => [name, `settline/${name}`]),
        show,
      ),
    ];
    this.count = document.createElement('p');
    this.count.setAttribute('role', 'status');
    const fields = document.createElement('div');
    fields.className = 'checked-choices';
    fields.append(...this.choices.map(({ element }) => element));
    this.append(fields, this.count);
    const given = new URLSearchParams(location.search);
    for (const { select } of this.choices) select.value = given.get(select.name) ?? '';
    this.show();
  }

  /** Hides what was not chosen, and writes the choice into the address. */
  show() {
    const [source, folder] = this.choices.map(({ select }) => select.value);
    let figures = 0;
    let shown = 0;
    for (const section of sections()) {
      const isChosen =
        (source === '' || section.dataset.source === source) &&
        (folder === '' || foldersOf(section).includes(folder));
      section.hidden = !isChosen;
      if (!isChosen) continue;
      shown += 1;
      figures += section.querySelectorAll('tbody tr').length;
    }
    this.count.textContent = `${counted(figures, 'figure')} of ${counted(shown, 'publication')}.`;
    const chosen = new URLSearchParams();
    if (source !== '') chosen.set('source', source);
    if (folder !== '') chosen.set('folder', folder);
    const query = chosen.size === 0 ? '' : `?${chosen}`;
    history.replaceState(history.state, '', `${location.pathname}${query}${location.hash}`);
  }
}

customElements.define('checked-filter', CheckedFilter);
