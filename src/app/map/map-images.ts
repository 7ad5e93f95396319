import type { Hatch } from '../../presentation/views/map-view.ts';
import { tokenColour } from './map-colours.ts';

/** Pixels of an image for one of the page, so that lines stay sharp on fine screens. */
export const MAP_IMAGE_PIXEL_RATIO = 2;

/** Tile sizes in px of the page: the pitch says how much is missing, as in tokens.css. */
const TILES: Readonly<Record<Hatch, { readonly size: number; readonly token: string; readonly lines: string }>> = {
  some: { size: 8, token: 'alarm', lines: '/' },
  much: { size: 5, token: 'alarm', lines: '/' },
  nothing: { size: 6, token: 'alarm', lines: 'x' },
  unknown: { size: 5, token: 'rule-strong', lines: '|' },
};

/** The image of a name the style uses, in the colours of the theme that now holds; none for a name it does not know. */
export function mapImage(id: string): ImageData | undefined {
  if (id === 'depot') return depotImage();
  const hatch = id.replace(/^hatch-/, '');
  return hatch in TILES ? hatchImage(hatch as Hatch) : undefined;
}

/** A tile that joins its neighbours without a seam. */
function hatchImage(hatch: Hatch): ImageData {
  const { size, token, lines } = TILES[hatch];
  const side = size * MAP_IMAGE_PIXEL_RATIO;
  const canvas = document.createElement('canvas');
  canvas.width = side;
  canvas.height = side;
  const pen = canvas.getContext('2d');
  if (pen === null) return new ImageData(side, side);
  pen.strokeStyle = tokenColour(token);
  pen.lineWidth = MAP_IMAGE_PIXEL_RATIO * (hatch === 'some' || hatch === 'unknown' ? 1 : 1.3);
  pen.beginPath();
  for (const shift of [-side, 0, side]) {
    if (lines === '/' || lines === 'x') line(pen, shift - side, 2 * side, shift + 2 * side, -side);
    if (lines === 'x') line(pen, shift - side, -side, shift + 2 * side, 2 * side);
    if (lines === '|') line(pen, shift + side / 2, -side, shift + side / 2, 2 * side);
  }
  pen.stroke();
  return pen.getImageData(0, 0, side, side);
}

function line(pen: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
}

/** A depot: a square with a cross, as on printed maps of stores. */
function depotImage(): ImageData {
  const side = 18 * MAP_IMAGE_PIXEL_RATIO;
  const canvas = document.createElement('canvas');
  canvas.width = side;
  canvas.height = side;
  const pen = canvas.getContext('2d');
  if (pen === null) return new ImageData(side, side);
  pen.fillStyle = tokenColour('sheet');
  pen.strokeStyle = tokenColour('ink');
  pen.lineWidth = MAP_IMAGE_PIXEL_RATIO * 1.8;
  pen.fillRect(2, 2, side - 4, side - 4);
  pen.strokeRect(3, 3, side - 6, side - 6);
  pen.beginPath();
  line(pen, side / 2, side * 0.28, side / 2, side * 0.72);
  line(pen, side * 0.28, side / 2, side * 0.72, side / 2);
  pen.stroke();
  return pen.getImageData(0, 0, side, side);
}
