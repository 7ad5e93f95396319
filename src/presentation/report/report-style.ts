/** The report's own style sheet: no file beside it, no network, black on white on paper. */
export const REPORT_STYLE = `
:root { color-scheme: light; --ink: #16241d; --soft: #4c5a51; --rule: #8a8672; --ground: #fbf8f0; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem; max-width: 62rem; background: var(--ground); color: var(--ink);
  font: 1rem/1.45 system-ui, "Liberation Sans", Arial, sans-serif; }
h1 { font-size: 1.7rem; margin: 0 0 .3rem; }
h2 { font-size: 1.2rem; margin: 1.8rem 0 .5rem; border-bottom: 2px solid var(--ink); }
h3 { font-size: 1rem; margin: 1rem 0 .3rem; }
p, li { max-width: 46rem; }
.caution { border: 2px solid var(--ink); padding: .5rem .8rem; font-weight: 600; max-width: none; }
.big { font-size: 1.6rem; font-weight: 700; margin: .3rem 0 0; }
table { border-collapse: collapse; width: 100%; margin: .5rem 0; }
caption { text-align: left; font-weight: 600; }
th, td { padding: .2rem .5rem; border-bottom: 1px solid #d9d1be; text-align: right; vertical-align: top; font-variant-numeric: tabular-nums; }
thead th { font-weight: 600; color: var(--soft); vertical-align: bottom; }
th:first-child { text-align: left; font-weight: 400; }
tbody tr.all th, tbody tr.all td { font-weight: 700; border-top: 2px solid var(--ink); }
.sources td, .sources th { text-align: left; font-size: .82rem; overflow-wrap: anywhere; }
.one-line { white-space: nowrap; }
.sources th:first-child { min-width: 11rem; }
.sources td:last-child { min-width: 6.5rem; }
.none { color: var(--soft); }
svg { max-width: 100%; height: auto; }
figure { margin: .5rem 0; }
figcaption, .key { font-size: .9rem; }
.key { display: flex; flex-wrap: wrap; gap: 1rem; list-style: none; padding: 0; margin: .3rem 0; }
@media print {
  @page { size: A4; margin: 14mm; }
  body { background: #fff; padding: 0; max-width: none; font-size: 9.5pt; }
  section, table, figure { break-inside: auto; }
  h2, h3, caption, thead { break-after: avoid; }
  tr, figure { break-inside: avoid; }
  thead { display: table-header-group; }
}
`;
