// One plain look for all elements, in the colours of the site where it sets them (--vp-c-*). Light and
// dark follow the color-scheme of the page.
const STYLES = `
:host { display: block; margin: 1.25rem 0; color: var(--ink); font: inherit; line-height: 1.5;
  --ink: var(--vp-c-text-1, light-dark(#1d2226, #e9ecee));
  --quiet: var(--vp-c-text-2, light-dark(#566069, #a7b1b9));
  --paper: var(--vp-c-bg, light-dark(#ffffff, #191d20));
  --field: light-dark(#ffffff, #111416);
  --ground: var(--vp-c-bg-soft, light-dark(#f3f4f2, #22272b));
  --rule: var(--vp-c-divider, light-dark(#c3c9c6, #454e55));
  --edge: light-dark(#79838a, #7d8992);
  --accent: var(--vp-c-brand-1, light-dark(#1d5b66, #86c5d1));
  --good: light-dark(#20623a, #8ed3a5);
  --bad: light-dark(#9c2413, #ff9f8a);
  --layer-paver: light-dark(#dfc9bb, #6a4e42);
  --layer-sand: light-dark(#f0e4b6, #5d5432);
  --layer-stone: light-dark(#d8dde0, #47525a);
  --mono: ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace; }
:host([hidden]) { display: none; }
* { box-sizing: border-box; }
p { margin: 0.4rem 0; }
:host { container-type: inline-size; }
.block { border: 1px solid var(--rule); border-top: 3px solid var(--edge); background: var(--paper); padding: 0.9rem 1rem; }
.title { font-weight: 600; margin: 0 0 0.6rem; }
.sides { display: grid; gap: 0.75rem 1.5rem; grid-template-columns: minmax(0, 1fr); }
.form { display: grid; gap: 0.7rem 1.2rem; align-content: start; min-width: 0; grid-template-columns: repeat(auto-fit, minmax(min(15rem, 100%), 1fr)); }
.form > fieldset, .form > .flag { grid-column: 1 / -1; }
.field { display: grid; gap: 0.15rem; align-content: start; }
.field label, legend { font-size: 0.92rem; font-weight: 500; }
.hint { color: var(--quiet); font-size: 0.82rem; font-weight: 400; }
th .hint { display: block; }
input[type=text], select, textarea { font: inherit; color: var(--ink); background: var(--field); border: 1px solid var(--edge);
  border-radius: 2px; padding: 0.3rem 0.45rem; width: 100%; min-width: 0; }
input[type=checkbox] { width: 1.1rem; height: 1.1rem; margin: 0 0.5rem 0 0; vertical-align: -0.15rem; accent-color: var(--accent); }
:focus-visible { outline: 2px solid var(--accent); outline-offset: 1px; }
[aria-invalid=true] { border-color: var(--bad) !important; border-width: 2px !important; }
.fault { color: var(--bad); font-size: 0.86rem; overflow-wrap: anywhere; }
.fault:empty { display: none; }
fieldset { border: 0; margin: 0; padding: 0; min-width: 0; }
legend { padding: 0; }
.rows table { border-collapse: collapse; width: 100%; table-layout: fixed; margin: 0.2rem 0; }
.rows th, .rows td { padding: 0.12rem 0.3rem 0.12rem 0; text-align: left; vertical-align: top; font-size: 0.86rem; border: 0; background: none; }
.rows th { color: var(--quiet); font-weight: 500; }
.rows tr > :last-child { width: 2.3rem; padding-right: 0; }
button { font: inherit; font-size: 0.9rem; color: var(--ink); background: var(--ground); border: 1px solid var(--edge);
  border-radius: 2px; padding: 0.25rem 0.7rem; cursor: pointer; }
button:hover { border-color: var(--accent); color: var(--accent); }
button:disabled { color: var(--quiet); cursor: default; border-color: var(--rule); }
button.remove { width: 2rem; padding: 0.25rem 0; }
button.main { background: var(--accent); color: var(--paper); border-color: var(--accent); }
button.main:hover { color: var(--paper); text-decoration: underline; }
button.place { font-size: 0.8rem; padding: 0 0.4rem; }
.answer { font-size: 1.08rem; font-weight: 600; margin: 0 0 0.5rem; }
.results { min-width: 0; }
.faults { margin: 0; padding-left: 1.1rem; color: var(--bad); }
.faults:empty { display: none; }
.faults li { overflow-wrap: anywhere; }
code, .formula { font-family: var(--mono); font-size: 0.88em; overflow-wrap: anywhere; color: inherit; background: none; }
.code { color: var(--quiet); }
.drawing { overflow-x: auto; margin: 0.4rem 0; }
.drawing svg { display: block; max-width: none; height: auto; }
.drawing svg.layers, .drawing svg.outlines { max-width: 100%; }
svg text { font-family: inherit; }
svg.layers text { font-size: 13px; fill: var(--ink); }
svg .band { stroke: var(--edge); stroke-width: 1; }
svg .old { fill: var(--field); stroke: var(--ink); stroke-width: 1.4; stroke-dasharray: 6 3; fill-opacity: 0.75; }
svg .measure { stroke: var(--ink); stroke-width: 1; }
svg .finish { stroke: var(--ink); stroke-width: 2; }
svg .string { stroke: var(--bad); stroke-width: 2; }
svg .surface { stroke: var(--quiet); stroke-width: 1.5; stroke-dasharray: 5 4; }
svg .paving { fill: var(--layer-paver); stroke: var(--ink); stroke-width: 1.2; }
svg .dig-line { fill: none; stroke: var(--ink); stroke-width: 1.6; stroke-dasharray: 9 4 2 4; }
details { border-top: 1px solid var(--rule); margin-top: 0.6rem; padding-top: 0.4rem; }
summary { cursor: pointer; font-weight: 500; }
.scroll { overflow-x: auto; margin: 0.5rem 0; }
.scroll table { border-collapse: collapse; font-size: 0.9rem; }
.scroll caption { text-align: left; font-weight: 500; padding-bottom: 0.2rem; }
.scroll th, .scroll td { text-align: left; padding: 0.2rem 0.9rem 0.2rem 0; border-bottom: 1px solid var(--rule); vertical-align: top; }
.scroll th { font-weight: 500; color: var(--quiet); }
.steps { padding-left: 1.4rem; margin: 0.5rem 0; }
.step { margin-bottom: 0.8rem; }
.step strong { font-weight: 600; display: block; }
.step .formula { display: block; width: fit-content; max-width: 100%; overflow-x: auto; background: var(--ground); padding: 0.15rem 0.5rem; margin: 0.15rem 0; font: inherit; }
math { font-family: 'STIX Two Math', math; }
.step ul { list-style: none; padding: 0; margin: 0; font-size: 0.92rem; }
.step .result { margin: 0.1rem 0; font-weight: 500; }
.source { color: var(--quiet); font-size: 0.86rem; margin: 0; }
.notes { font-size: 0.9rem; border-left: 3px solid var(--rule); padding-left: 0.8rem; margin: 0.8rem 0; }
.notes:empty { display: none; }
.bar { display: flex; flex-wrap: wrap; gap: 0.5rem; align-items: center; margin-top: 0.7rem; }
.said { margin-left: 0.5rem; font-size: 0.88rem; }
.calls { color: var(--quiet); font-size: 0.88rem; }
.numbered { display: flex; border: 1px solid var(--edge); border-radius: 2px; background: var(--field); margin: 0.5rem 0; }
.numbered .numbers { overflow: hidden; flex: none; text-align: right; color: var(--quiet); background: var(--ground);
  padding: 0.5rem 0.45rem; font: 0.86rem/1.5 var(--mono); max-height: 60vh; user-select: none; min-width: 2.8rem; }
.numbers span { display: block; }
.numbers .good { color: var(--good); font-weight: 700; }
.numbers .bad { color: var(--bad); font-weight: 700; }
.numbered textarea { border: 0; border-radius: 0; font: 0.86rem/1.5 var(--mono); padding: 0.5rem; resize: none; white-space: pre; overflow: auto;
  max-height: 60vh; tab-size: 2; }
.lines { margin: 0.4rem 0; padding: 0; list-style: none; font-size: 0.92rem; }
.lines li { padding: 0.15rem 0; overflow-wrap: anywhere; }
.lines .good { color: var(--good); }
.lines .bad { color: var(--bad); }
pre.sheet { font: 0.84rem/1.4 var(--mono); overflow: auto; background: var(--field); border: 1px solid var(--rule); padding: 0.8rem; margin: 0.4rem 0; max-height: 80vh; white-space: pre; }
.tabs { display: flex; flex-wrap: wrap; gap: 0.3rem; margin: 0.8rem 0 0.4rem; }
.tabs [aria-selected=true] { background: var(--ink); color: var(--paper); border-color: var(--ink); }
.line { display: flex; flex-wrap: wrap; gap: 0.5rem 1rem; align-items: end; }
.line .field { min-width: 10rem; max-width: 100%; }
.line select { text-overflow: ellipsis; }
.bar + .answer { margin-top: 0.6rem; }
@container (min-width: 46rem) { .sides { grid-template-columns: minmax(0, 5fr) minmax(0, 6fr); } }
@media print {
  .form, .bar, .tabs, .no-print { display: none !important; }
  .block { border: 0; padding: 0; }
  .answer, .drawing, .step { break-inside: avoid; }
  .scroll { overflow: visible; }
  pre.sheet { max-height: none; overflow: visible; border: 0; white-space: pre-wrap; }
}
`;

/**
 * Keys that are typed into a field stay in it: a page sees the element and not the field in it, and
 * would take the `/` of 1/2 for the key that opens its search.
 */
function keepKeys(root: ShadowRoot): void {
  root.addEventListener('keydown', (event) => {
    const { ctrlKey, metaKey } = event as KeyboardEvent;
    const isField = event.target instanceof HTMLElement && event.target.matches('input, textarea');
    if (isField && !ctrlKey && !metaKey) event.stopPropagation();
  });
}

/** The open shadow root of an element, with the styles in it. */
export function styledShadow(host: HTMLElement): ShadowRoot {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(STYLES);
  root.adoptedStyleSheets = [sheet];
  keepKeys(root);
  return root;
}
