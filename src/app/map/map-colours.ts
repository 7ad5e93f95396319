import type { Tone } from '../../presentation/views/map-view.ts';

/** Reads a colour of tokens.css as it stands for the theme in use. */
export function tokenColour(tone: Tone): string {
  return getComputedStyle(document.documentElement).getPropertyValue(`--${tone}`).trim() || '#888888';
}

/** Red, green, blue of a `#rrggbb` colour. */
export function rgbOf(hex: string): [number, number, number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}
