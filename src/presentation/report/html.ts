import type { Plan } from '../../engine/index.ts';
import { grouped } from '../grouped-figure.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as HTML: whatever a file holds stays text. */
export const escapeHtml = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);

/** A figure of the plan that says which one it is, so that a reader (or a test) can look it up in plan.json. */
export type Figure = (path: string, decimals?: number) => string;

/** @param none what stands where the plan holds no number */
export function figuresOf(plan: Plan, none: string): Figure {
  return (path, decimals = 0) => {
    const value = valueAt(plan, path);
    if (typeof value !== 'number') return `<span class="none">${escapeHtml(none)}</span>`;
    const shown = grouped(value, decimals).replace('-', '\u2212').replaceAll(' ', '\u00a0');
    return `<data value="${value}" data-figure="${escapeHtml(path)}">${shown}</data>`;
  };
}

/** Value at a dotted path of the plan. */
export function valueAt(plan: Plan, path: string): unknown {
  let value: unknown = plan;
  for (const step of path.split('.')) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string, unknown>)[step];
  }
  return value;
}

/** A table; the first cell of each row names it. Cells are HTML already. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], caption = ''): string {
  const cells = (row: readonly string[]) =>
    row.map((cell, i) => (i === 0 ? `<th scope="row">${cell}</th>` : `<td>${cell}</td>`)).join('');
  const title = caption === '' ? '' : `<caption>${caption}</caption>`;
  const top = head.map((cell) => `<th scope="col">${cell}</th>`).join('');
  return `<table>${title}<thead><tr>${top}</tr></thead><tbody>${rows.map((row) => `<tr>${cells(row)}</tr>`).join('')}</tbody></table>`;
}

export const section = (title: string, ...parts: readonly string[]): string =>
  `<section><h2>${escapeHtml(title)}</h2>${parts.join('')}</section>`;

export const paragraph = (text: string): string => `<p>${escapeHtml(text)}</p>`;

export const list = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${escapeHtml(item)}</li>`).join('')}</ul>`;
