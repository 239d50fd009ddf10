import { accents, ink } from '../charts/theme.js';

const accent = accents[0]?.colour ?? ink.full;

/** Colours of the page. Figures keep their white paper in the dark, so that they look as they are published. */
const colours = `
:root {
  color-scheme: light dark;
  --paper: #fcfbf8; --ink: ${ink.full}; --soft: #535f6a; --hair: #d8d5cc; --wash: #f3f1ea;
  --accent: ${accent}; --accent-wash: #d3d8ee; --figure: ${ink.paper};
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #14191e; --ink: #e8e6e0; --soft: #a9b2bb; --hair: #37414a; --wash: #1c2329;
    --accent: #a9b6f5; --accent-wash: #3a4680; --figure: #ffffff;
  }
}`;

const type = `
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; scroll-padding-top: 1rem; }
body {
  margin: 0; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.55 Charter, "Bitstream Charter", "Iowan Old Style", Palatino, Georgia, "Liberation Serif", serif;
}
h1, h2, h3 { font-weight: 500; line-height: 1.18; text-wrap: balance; margin: 0; }
h1 { font-size: clamp(2rem, 1.4rem + 2.6vw, 3.1rem); letter-spacing: -0.012em; }
h2 { font-size: clamp(1.45rem, 1.2rem + 1vw, 1.9rem); letter-spacing: -0.006em; }
h3 { font-size: 1.15rem; }
p { margin: 0 0 0.8em; max-width: 40em; text-wrap: pretty; }
a { color: var(--accent); text-underline-offset: 0.15em; text-decoration-thickness: 0.06em; }
:focus-visible { outline: 0.16rem solid var(--accent); outline-offset: 0.2rem; }
.kicker, nav, table, .measure, .marks, .n, figcaption, .tag, dt, .tip, .skip, tfoot {
  font-family: "Helvetica Neue", Helvetica, Arial, Arimo, "Liberation Sans", sans-serif;
}
.skip { position: absolute; left: -100vw; top: 0.5rem; padding: 0.4rem 0.8rem; background: var(--paper); }
.skip:focus { left: 0.5rem; z-index: 3; }`;

const layout = `
.page { max-width: 76rem; margin: 0 auto; padding: 2.6rem 1.5rem 4rem; }
.kicker { font-size: 0.8rem; color: var(--soft); letter-spacing: 0.02em; margin: 0 0 0.7rem; }
.cohort { font-size: 1.2rem; color: var(--soft); margin: 0.8rem 0 0; }
header { border-top: 3px solid var(--ink); padding-top: 1.1rem; margin-bottom: 2.2rem; }
nav { font-size: 0.86rem; line-height: 1.35; }
nav ol { list-style: none; margin: 0; padding: 0; }
nav li { border-top: 1px solid var(--hair); }
nav li:last-child { border-bottom: 1px solid var(--hair); }
nav a { display: block; padding: 0.5rem 0; color: var(--ink); text-decoration: none; }
nav a:hover { color: var(--accent); text-decoration: underline; }
main > section + section { padding-top: 3.4rem; }
main > section > h2 { border-top: 1px solid var(--ink); padding-top: 0.9rem; margin-bottom: 0.9rem; }
.answer { font-size: 1.2rem; line-height: 1.45; margin-bottom: 0.35em; }
@media (min-width: 64rem) {
  .page { display: grid; grid-template-columns: 13.5rem minmax(0, 1fr); column-gap: 3.6rem; }
  header, footer { grid-column: 1 / -1; }
  nav { position: sticky; padding-top: 0.15rem; top: 1.5rem; align-self: start; max-height: calc(100vh - 3rem); overflow-y: auto; }
}`;

const opening = `
.numbers { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 15.5rem), 1fr)); margin: 0; gap: 0 2.2rem; }
.number { border-top: 1px solid var(--hair); padding: 0.9rem 0 1.2rem; display: grid; grid-row: span 4; grid-template-rows: subgrid; row-gap: 0; }
.number dt { font-size: 0.86rem; line-height: 1.3; color: var(--soft); align-self: end; }
.number dd { margin: 0; }
.figure-of { font-size: 2.35rem; line-height: 1.25; letter-spacing: -0.02em; font-variant-numeric: lining-nums tabular-nums; white-space: nowrap; }
.measure { font-size: 0.84rem; line-height: 1.4; color: var(--soft); font-variant-numeric: tabular-nums; }
.strip { padding-top: 0.6rem; }
.strip svg { display: block; width: 100%; height: 0.875rem; overflow: visible; }
.strip .axis, .strip .mark { stroke: var(--soft); stroke-width: 1px; vector-effect: non-scaling-stroke; }
.strip .band { fill: var(--accent-wash); }
.strip .value { stroke: var(--accent); stroke-width: 3px; vector-effect: non-scaling-stroke; }
.marks { display: flex; justify-content: space-between; font-size: 0.72rem; color: var(--soft); padding-top: 0.1rem; }
.lead { margin: 2rem 0 0; }
.lead p { font-size: 1.2rem; line-height: 1.5; }
.care { margin-top: 1.8rem; padding: 1rem 1.2rem 0.4rem; background: var(--wash); border-left: 4px solid var(--accent); max-width: 46rem; }
.care h2 { font-size: 1.1rem; margin-bottom: 0.5rem; }
.care ul { margin: 0; padding: 0 0 0 1.1rem; }
.care li { margin-bottom: 0.5rem; }`;

const exhibits = `
figure { margin: 2.2rem 0 2.6rem; display: flex; flex-wrap: wrap; align-items: flex-start; gap: 0.9rem 2rem; }
.paper { background: var(--figure); padding: 0.8rem 0.9rem; overflow-x: auto; max-width: 100%; border: 1px solid var(--hair); }
.paper svg { display: block; width: calc(var(--w) * 1.75px); min-width: calc(var(--w) * 1.15px); max-width: 100%; height: auto; }
figcaption { font-size: 0.86rem; line-height: 1.5; color: var(--soft); flex: 1 1 15rem; max-width: 46rem; }
figcaption b { color: var(--ink); font-weight: 600; }
.wide { overflow-x: auto; margin: 2.2rem 0 2.6rem; }
table { border-collapse: collapse; font-size: 0.86rem; line-height: 1.35; font-variant-numeric: tabular-nums lining-nums; min-width: min(100%, 34rem); }
caption { text-align: left; font-size: 0.95rem; font-weight: 600; padding-bottom: 0.55rem; max-width: min(46rem, calc(100vw - 3rem)); }
thead { border-top: 2px solid var(--ink); border-bottom: 1px solid var(--ink); }
tfoot { border-top: 2px solid var(--ink); }
th, td { padding: 0.27rem 1.1rem 0.27rem 0; text-align: left; vertical-align: top; font-weight: 400; }
th:last-child, td:last-child { padding-right: 0; }
thead th { font-weight: 600; vertical-align: bottom; }
thead .n { font-weight: 400; color: var(--soft); white-space: nowrap; }
tbody th { min-width: 11rem; }
tbody td { white-space: nowrap; }
tbody td.words { white-space: normal; min-width: 11rem; }
.block th { font-weight: 600; padding-top: 0.8rem; }
.inner th { padding-left: 1rem; }
tfoot td { padding: 0.3rem 0 0; color: var(--soft); font-size: 0.8rem; white-space: normal; max-width: 46rem; }
tfoot tr:first-child td { padding-top: 0.6rem; }
.review { border-bottom: 2px solid var(--ink); }
.review tbody th { min-width: 0; }
.review td:last-child { white-space: normal; }
section > h3 { margin: 2rem 0 0.6rem; }
.rules { list-style: none; margin: 0; padding: 0; max-width: 46rem; }
.rules > li { border-top: 1px solid var(--hair); }
.rules > li:last-child { border-bottom: 1px solid var(--hair); }
.rule { display: grid; grid-template-columns: 3rem 1fr auto; gap: 0.9rem; padding: 0.42rem 0; align-items: baseline; }
summary.rule { cursor: pointer; }
summary.rule::after { content: "+"; color: var(--soft); padding: 0 0.4rem; }
[open] > summary.rule::after { content: "\\2212"; }
.count { font-variant-numeric: tabular-nums lining-nums; text-align: right; font-weight: 600; }
details ul { margin: 0 0 0.9rem; padding-left: 3.9rem; list-style: none; font-size: 0.95rem; color: var(--soft); }
@media (max-width: 48rem) {
  tbody th[scope=row], thead th:first-child { position: sticky; left: 0; background: var(--paper); min-width: 8rem; max-width: 9.5rem; }
  .inner th { padding-left: 0.6rem; }
}
.works { padding-left: 1.4rem; max-width: 42rem; }
footer { margin-top: 3.2rem; border-top: 3px solid var(--ink); padding-top: 1rem; }
footer p { color: var(--soft); font-size: 0.95rem; }`;

const print = `
@page { margin: 18mm 16mm; }
@page across { size: landscape; margin: 14mm 16mm; }
@media print {
  :root { --paper: #fff; --ink: #000; --soft: #444; --hair: #bbb; --wash: #fff; --accent: ${accent}; --accent-wash: #d3d8ee; }
  body { font-size: 10pt; line-height: 1.4; }
  .page { display: block; max-width: none; padding: 0; }
  nav, .skip, .tip { display: none; }
  h1 { font-size: 24pt; }
  h2 { font-size: 15pt; }
  h1, h2, h3, caption, .answer { break-after: avoid; }
  .numbers { grid-template-columns: repeat(3, 1fr); column-gap: 8mm; }
  .number { padding: 2.5mm 0 3.5mm; }
  .figure-of { font-size: 20pt; }
  .lead p, .answer, .cohort { font-size: 11.5pt; }
  main > section + section { padding-top: 9mm; }
  .number, figure, .care, table, tbody, tr, .rules > li { break-inside: avoid; }
  figure, .wide { margin: 5mm 0 7mm; }
  figure { gap: 3mm 7mm; }
  .paper, .wide { overflow: visible; }
  .paper { padding: 0; border: 0; }
  .paper svg { width: calc(var(--w) * 0.96pt); min-width: 0; }
  figcaption { flex-basis: 50mm; }
  table { font-size: 8pt; line-height: 1.25; min-width: 0; width: 100%; }
  th, td { padding: 0.55mm 3mm 0.55mm 0; }
  tbody th { min-width: 0; }
  .block th { padding-top: 1.6mm; }
  caption { font-size: 9pt; padding-bottom: 1.5mm; }
  .rule { padding: 0.8mm 0; }
  summary.rule::after { content: none; }
  .wide:has(thead th:nth-child(7)) { page: across; }
  .wide:has(thead th:nth-child(7)) table { font-size: 7.5pt; }
  .wide:has(thead th:nth-child(7)) :is(thead .n, tbody td) { white-space: normal; }
  thead { display: table-header-group; }
  tfoot { display: table-row-group; }
  tfoot td { font-size: 7pt; padding-top: 0.6mm; }
  figcaption { font-size: 8pt; }
  svg rect, svg path, svg line { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}`;

/** Styles of the page: a column of reading, numbers and tables set like a journal's, and a sheet for the printer. */
export const style = [colours, type, layout, opening, exhibits, print].join('\n');

/** What only the page that stays in the clinic needs: the value of a point, shown beside it. */
export const internalStyle = `
.paper:focus-visible { outline-offset: -0.1rem; }
.paper [aria-label].here { stroke: var(--accent); stroke-width: 2px; }
.tip { position: fixed; z-index: 2; max-width: 20rem; padding: 0.3rem 0.6rem; background: #1d2730; color: #fff; font-size: 0.82rem; line-height: 1.35; pointer-events: none; }
.tip:empty { display: none; }`;
