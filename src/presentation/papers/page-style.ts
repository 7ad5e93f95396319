export const PAPER_SIZES = ['A4', 'Letter'] as const;
export type PaperSize = (typeof PAPER_SIZES)[number];

/** Width and height between the margins, mm: ISO 216 A4 is 210 by 297, Letter (ANSI/ASME Y14.1 size A) 215.9 by 279.4. */
const MARGIN = 12;
const SHEET: Readonly<Record<PaperSize, readonly [width: number, height: number]>> = {
  A4: [210, 297],
  Letter: [215.9, 279.4],
};

/** The one style of all papers: black on white, 8.5 points at least, on the screen as on the sheet it will be. */
export function pageStyle(size: PaperSize): string {
  const [width, height] = SHEET[size];
  const [inner, tall] = [width - 2 * MARGIN, height - 2 * MARGIN];
  return `
@page { size: ${size}; margin: ${MARGIN}mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8.5pt sans-serif; } }
@page turned { size: ${size} landscape; }
.paper { --sheet-height: ${tall - 1}mm; width: ${inner}mm; --turned-width: ${height - 2 * MARGIN}mm; --turned-height: ${width - 2 * MARGIN - 1}mm; }
${SHAPES}`;
}

const SHAPES = `
body.papers { margin: 0; background: #fff; }
.paper, .paper * { box-sizing: border-box; }
.paper { color: #000; background: #fff; font: 400 9.5pt/1.3 "Atkinson Hyperlegible Next Variable", "Atkinson Hyperlegible Next", "Noto Sans", "Liberation Sans", Arial, Roboto, Helvetica, sans-serif; font-variant-numeric: tabular-nums lining-nums; display: flex; flex-direction: column; gap: 2.2mm; min-height: var(--sheet-height); hyphens: auto; overflow-wrap: break-word; }
.paper.turned { width: var(--turned-width); min-height: var(--turned-height); page: turned; }
.paper h1 { font-size: 17pt; line-height: 1.15; margin: 0 0 1mm; font-weight: 700; letter-spacing: 0; }
.paper h2 { font-size: 11pt; line-height: 1.2; margin: 0 0 0.8mm; font-weight: 700; break-after: avoid; }
.paper p { margin: 0; }
.paper b { font-weight: 700; }
.paper header { display: flex; justify-content: space-between; gap: 6mm; align-items: flex-start; border-bottom: 0.6mm solid #000; padding-bottom: 2mm; }
.paper .corner { flex: none; border: 0.6mm solid #000; padding: 1.5mm 4mm; text-align: center; display: flex; flex-direction: column; min-width: 36mm; max-width: 52mm; }
.paper .corner b { font-size: 21pt; line-height: 1.1; }
.paper .note { font-size: 9pt; color: #000; }
.paper .lead { font-size: 11.5pt; font-weight: 700; }
.paper section.framed { border: 0.6mm solid #000; padding: 2mm 3mm; break-inside: avoid; }
.paper section.take-care p { font-size: 9pt; line-height: 1.25; }
.paper section.take-care { border-left: 2mm solid #000; padding-left: 3mm; break-inside: avoid; }
.paper section > * + * { margin-top: 1.2mm; }
.paper section h2 + * { margin-top: 0; }
.paper table { border-collapse: collapse; width: 100%; font-size: 9pt; line-height: 1.22; }
.paper th { text-align: left; font-weight: 400; font-size: 8.5pt; vertical-align: bottom; padding: 0 1.5mm 0.6mm 0; }
.paper thead { display: table-header-group; }
.paper thead th { border-bottom: 0.45mm solid #000; }
.paper td { border-bottom: 0.2mm solid #555; padding: 0.8mm 1.5mm 0.7mm 0; vertical-align: top; height: 5mm; }
.paper tr { break-inside: avoid; }
.paper .right { text-align: right; white-space: nowrap; }
.paper td.whole { white-space: nowrap; }
.paper th.right { white-space: normal; }
.paper td.blank { border-left: 0.3mm solid #000; min-width: 11mm; }
.paper th.blank { padding-left: 1mm; }
.paper td:has(+ td.blank), .paper th:has(+ th.blank) { padding-right: 2mm; }
.paper tr.group th { font-size: 9pt; font-weight: 700; padding-top: 1.2mm; border-bottom: 0.3mm solid #000; break-after: avoid; }
.paper tr.sum td { border-top: 0.45mm solid #000; border-bottom: 0.45mm solid #000; font-weight: 700; }
.paper table.open td, .paper table.list td { height: 8.4mm; vertical-align: middle; }
.paper table.list, .paper table.even { table-layout: fixed; }
.paper table.grid { table-layout: fixed; }
.paper table.grid td { border: 0.25mm solid #000; padding: 0.8mm 1.2mm; height: 22mm; font-size: 8.5pt; line-height: 1.2; }
.paper .paired > div { display: flex; justify-content: space-between; gap: 2mm; }
.paper .paired > div + div { border-top: 0.15mm dotted #555; }
.paper .paired span:last-child { white-space: nowrap; }
.paper .big { font-size: 14pt; line-height: 1; }
.paper ol.steps, .paper ul.checks { margin: 0; padding: 0; list-style: none; display: grid; gap: 1.1mm 5mm; font-size: 9pt; line-height: 1.28; }
.paper .in-1 { grid-template-columns: minmax(0, 1fr); }
.paper .in-2 { grid-template-columns: repeat(2, minmax(0, 1fr)); }
.paper .in-3 { grid-template-columns: repeat(3, minmax(0, 1fr)); }
.paper ol.steps { counter-reset: step; }
.paper ol.steps li { counter-increment: step; padding-left: 6mm; position: relative; break-inside: avoid; }
.paper ol.steps li::before { content: counter(step); position: absolute; left: 0; top: -0.4mm; font-weight: 700; font-size: 13pt; line-height: 1.1; }
.paper ul.checks li { padding-left: 6mm; position: relative; break-inside: avoid; }
.paper ul.checks li::before { content: ""; position: absolute; left: 0; top: 0.5mm; width: 3.4mm; height: 3.4mm; border: 0.35mm solid #000; }
.paper dl { margin: 0; }
.paper dl > div { display: grid; grid-template-columns: 27% minmax(0, 1fr); gap: 3mm; border-bottom: 0.2mm solid #555; padding: 0.9mm 0; break-inside: avoid; }
.paper dt { font-weight: 700; }
.paper dd { margin: 0; }
.paper .beside { display: flex; gap: 6mm; align-items: flex-start; }
.paper .beside > * { min-width: 0; flex: 10 1 0; display: flex; flex-direction: column; gap: 2.2mm; }
.paper .beside > .part-16 { flex-grow: 16; }
.paper .beside > .part-12 { flex-grow: 12; }
.paper .fields { display: flex; flex-wrap: wrap; gap: 1.5mm 5mm; }
.paper .fields span { display: flex; flex: 1 1 auto; align-items: flex-end; gap: 1.5mm; }
.paper .fields i { flex: 1 0 28mm; border-bottom: 0.25mm solid #000; height: 5mm; }
.paper .signatures { display: flex; gap: 8mm; padding-top: 8mm; margin-top: auto; break-inside: avoid; break-before: avoid; }
.paper .signatures span { flex: 1; border-top: 0.25mm solid #000; padding-top: 0.8mm; font-size: 8.5pt; }
.paper footer { display: flex; justify-content: space-between; gap: 6mm; font-size: 8.5pt; break-inside: avoid; break-before: avoid; }
.paper footer:not(.signatures + footer) { margin-top: auto; }
.paper svg { display: block; max-width: 100%; height: auto; }
.paper polyline { fill: none; stroke: #000; stroke-linejoin: round; stroke-linecap: butt; }
.paper polyline.line-grey { stroke: #777; }
.paper polyline.line-paper { stroke: #fff; }
.paper polygon, .paper circle { stroke: #000; stroke-width: 1.4; }
.paper .black { fill: #000; }
.paper .white { fill: #fff; }
.paper .none { fill: none; }
.paper text { font-family: inherit; fill: #000; }
.paper text.heavy { font-weight: 700; }
.paper text.rim { paint-order: stroke; stroke: #fff; stroke-width: 3.5px; stroke-linejoin: round; }
@media print { .paper { break-after: page; } .paper:last-child { break-after: auto; } }
@media screen { body.papers .paper { margin: 6mm auto; } }
@media screen and (max-width: 640px) {
  .paper, .paper.turned { width: auto; min-height: 0; margin: 0; padding: 16px; font-size: 16px; border-bottom: 2px solid #000; }
  body.papers .paper { margin: 0; }
  .paper h1 { font-size: 24px; }
  .paper h2 { font-size: 18px; }
  .paper table { font-size: 15px; display: block; overflow-x: auto; }
  .paper td.whole { white-space: normal; }
  .paper th, .paper .note, .paper footer { font-size: 13px; }
  .paper header, .paper .beside, .paper footer, .paper .signatures { display: block; }
  .paper .beside > * + * { margin-top: 12px; }
  .paper .in-2, .paper .in-3 { grid-template-columns: minmax(0, 1fr); }
  .paper .blank, .paper .signatures, .paper .fields { display: none; }
  .paper ol.steps li, .paper ul.checks li { padding-left: 28px; }
}
`;
