import type { Drawing, Mark } from './drawing.ts';
import type { Block, Cell, Column, Page, Row, Table, Text } from './page.ts';
import { type PaperSize, pageStyle } from './page-style.ts';

/** A whole file that needs nothing else: opened in a browser it shows the papers, printed it is the papers. */
export function renderDocument(
  pages: readonly Page[],
  { title, language, size }: { readonly title: string; readonly language: string; readonly size: PaperSize },
): string {
  return `<!doctype html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${pageStyle(size)}</style>
</head>
<body class="papers">
${renderPages(pages)}
</body>
</html>
`;
}

export const renderPages = (pages: readonly Page[]): string => pages.map(renderPage).join('\n');

function renderPage({ title, about, corner, turned, blocks, foot }: Page): string {
  const box = corner
    ? `<div class="corner"><span>${escaped(corner.above)}</span><b>${escaped(corner.big)}</b><span>${escaped(corner.below)}</span></div>`
    : '';
  return `<article class="paper${turned ? ' turned' : ''}">
<header><div><h1>${escaped(title)}</h1>${about.map((line) => `<p>${words(line)}</p>`).join('')}</div>${box}</header>
${blocks.map(renderBlock).join('\n')}
<footer><span>${escaped(foot[0])}</span><span>${escaped(foot[1])}</span></footer>
</article>`;
}

function renderBlock(block: Block): string {
  switch (block.kind) {
    case 'text':
      return `<p class="${block.look ?? 'plain'}">${words(block.text)}</p>`;
    case 'section':
      return `<section class="${SECTION_LOOKS[block.look ?? 'plain']}"><h2>${escaped(block.title)}</h2>${block.blocks.map(renderBlock).join('\n')}</section>`;
    case 'table':
      return renderTable(block);
    case 'steps':
      return `<ol class="steps in-${block.columns}">${block.items.map((item) => `<li>${words(item)}</li>`).join('')}</ol>`;
    case 'checks':
      return `<ul class="checks in-${block.columns}">${block.items.map((item) => `<li>${words(item)}</li>`).join('')}</ul>`;
    case 'pairs':
      return `<dl>${block.items.map(([when, then]) => `<div><dt>${words(when)}</dt><dd>${words(then)}</dd></div>`).join('')}</dl>`;
    case 'beside': {
      const parts = block.parts.map((part, i) => {
        const tenths = Math.round((block.shares[i] ?? 1) * 10);
        return `<div class="part-${tenths}">${part.map(renderBlock).join('\n')}</div>`;
      });
      return `<div class="beside">${parts.join('')}</div>`;
    }
    case 'drawing':
      return renderDrawing(block.drawing);
    case 'link':
      return `<p class="plain"><a href="${escaped(encodeURI(block.path))}">${escaped(block.text)}</a></p>`;
    case 'fields':
      return `<p class="fields">${block.labels.map((label) => `<span>${escaped(label)} <i></i></span>`).join('')}</p>`;
    case 'signatures':
      return `<div class="signatures">${block.labels.map((label) => `<span>${escaped(label)}</span>`).join('')}</div>`;
  }
}

const SECTION_LOOKS = { plain: 'plain', care: 'take-care', framed: 'framed' } as const;

function renderTable({ name, columns, rows, look }: Table): string {
  const widths = columns.some(({ width }) => width !== undefined)
    ? `<colgroup>${columns.map(({ width }) => (width === undefined ? '<col>' : `<col width="${width}%">`)).join('')}</colgroup>`
    : '';
  const heads = columns.map((column) => `<th scope="col"${classOf(column)}>${escaped(column.head)}</th>`).join('');
  const head = columns.some((column) => column.head !== '') ? `<thead><tr>${heads}</tr></thead>` : '';
  return `<table data-table="${escaped(name)}" class="${look ?? 'plain'}">${widths}${head}<tbody>${rows.map((row) => renderRow(row, columns)).join('\n')}</tbody></table>`;
}

function renderRow({ cells, role }: Row, columns: readonly Column[]): string {
  if (role === 'group') {
    return `<tr class="group"><th scope="rowgroup" colspan="${columns.length}">${cells.map(renderCell).join(' ')}</th></tr>`;
  }
  const shown = columns.map((column, i) => `<td${classOf(column)}>${renderCell(cells[i] ?? '')}</td>`).join('');
  return `<tr${role === undefined ? '' : ` class="${role}"`}>${shown}</tr>`;
}

function classOf({ align, blank, whole }: Column): string {
  const names = [...(align === 'right' ? ['right'] : []), ...(blank ? ['blank'] : []), ...(whole ? ['whole'] : [])];
  return names.length === 0 ? '' : ` class="${names.join(' ')}"`;
}

function renderCell(cell: Cell): string {
  if (typeof cell === 'object' && 'lines' in cell)
    return cell.lines.map((line) => `<div>${words(line)}</div>`).join('');
  if (typeof cell === 'object' && 'pairs' in cell) {
    const parts = cell.pairs.map(
      ([first, second]) => `<div><span>${words(first)}</span> <span>${words(second)}</span></div>`,
    );
    return `<div class="paired">${parts.join('')}</div>`;
  }
  if (typeof cell === 'object' && 'big' in cell) return `<b class="big">${escaped(cell.big)}</b>`;
  if (typeof cell === 'object' && 'drawing' in cell) return renderDrawing(cell.drawing);
  return words(cell);
}

function renderDrawing({ width, height, label, marks }: Drawing): string {
  const size = `viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`;
  return `<svg ${size} role="img" aria-label="${escaped(label)}">${marks.map(renderMark).join('')}</svg>`;
}

function renderMark(mark: Mark): string {
  switch (mark.kind) {
    case 'line': {
      const dashes = mark.dashes === undefined ? '' : ` stroke-dasharray="${mark.dashes}"`;
      return `<polyline class="line-${mark.tone ?? 'ink'}" points="${points(mark.spots)}" stroke-width="${mark.width}"${dashes}/>`;
    }
    case 'shape':
      return `<polygon class="${mark.fill}" points="${points(mark.spots)}"/>`;
    case 'disc':
      return `<circle class="${mark.fill}" cx="${fine(mark.at[0])}" cy="${fine(mark.at[1])}" r="${mark.radius}"/>`;
    case 'word': {
      const look = `${mark.heavy ? 'heavy' : 'light'}${mark.rim ? ' rim' : ''}`;
      const at = `x="${fine(mark.at[0])}" y="${fine(mark.at[1])}" font-size="${mark.size}" text-anchor="${mark.anchor}"`;
      return `<text class="${look}" ${at}>${escaped(mark.text)}</text>`;
    }
  }
}

const fine = (value: number): string => String(Math.round(value * 10) / 10);
const points = (spots: readonly (readonly [number, number])[]): string =>
  spots.map(([x, y]) => `${fine(x)},${fine(y)}`).join(' ');

function words(text: Text): string {
  if (typeof text === 'string') return escaped(text);
  return text.map((part) => (typeof part === 'string' ? escaped(part) : `<b>${escaped(part.strong)}</b>`)).join('');
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (mark) => ENTITIES[mark] ?? mark);
