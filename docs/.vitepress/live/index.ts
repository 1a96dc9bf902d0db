/** Elements of pages, each loaded where a page holds it. */
const ELEMENTS: Readonly<Record<string, () => Promise<CustomElementConstructor>>> = {
  'settline-live': async () => (await import('./block/settline-live.js')).SettlineLive,
  'settline-example': async () => (await import('./example/settline-example.js')).SettlineExample,
  'settline-job': async () => (await import('./job/settline-job.js')).SettlineJob,
};

/** Defines the elements that the page holds. Call it in the browser, each time the page has changed. */
export async function defineElements(): Promise<void> {
  const wanted = Object.entries(ELEMENTS).filter(
    ([name]) => customElements.get(name) === undefined && document.querySelector(name) !== null,
  );
  await Promise.all(
    wanted.map(async ([name, load]) => {
      const element = await load();
      if (customElements.get(name) === undefined) customElements.define(name, element);
    }),
  );
}
