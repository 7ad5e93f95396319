import { ScatterplotLayer, TextLayer } from '@deck.gl/layers';
import { MapLibreOverlay } from '@deck.gl/maplibre';
import type { Map as MapLibre } from 'maplibre-gl';
import type { MapSymbol } from '../../presentation/views/map-view.ts';
import { MAP_FACE } from './base-style.ts';
import { rgbOf, tokenColour } from './map-colours.ts';

/** Marks over the map that may move from frame to frame: stops with their numbers, vehicles. */
export interface MarksOverlay {
  show(marks: readonly MapSymbol[]): void;
}

type Mark = MapSymbol;

export function startOverlay(map: MapLibre): MarksOverlay {
  // Lies over the map instead of within it: the map library draws its labels below, whatever the order of layers.
  const overlay = new MapLibreOverlay({ interleaved: false, layers: [] });
  map.addControl(overlay);
  return { show: (marks) => overlay.setProps({ layers: layersOf(marks) }) };
}

/** Open rings are stops to come; filled ones are done. */
const isFilled = ({ kind }: Mark) => kind === 'stop-done' || kind === 'vehicle' || kind === 'problem';

/** What stops and vehicles are marked with: numbers and capital letters. */
const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function layersOf(marks: readonly Mark[]) {
  const colour = (tone: string) => rgbOf(tokenColour(tone));
  const sheet = colour('sheet');
  return [
    new ScatterplotLayer<Mark>({
      id: 'marks',
      data: marks as Mark[],
      getPosition: ({ position }) => [position[0], position[1]],
      getRadius: ({ size }) => size / 2,
      radiusUnits: 'pixels',
      stroked: true,
      lineWidthUnits: 'pixels',
      getLineWidth: ({ kind }) => (kind === 'stop-now' ? 3 : 2),
      getFillColor: (mark) => (isFilled(mark) ? colour(mark.tone) : sheet),
      getLineColor: ({ tone }) => colour(tone),
    }),
    new TextLayer<Mark>({
      id: 'mark-texts',
      data: marks.filter(({ text }) => text !== '') as Mark[],
      getPosition: ({ position }) => [position[0], position[1]],
      getText: ({ text }) => text,
      getSize: ({ size }) => size * 0.62,
      getColor: (mark) => (isFilled(mark) ? sheet : colour(mark.tone)),
      fontFamily: MAP_FACE,
      fontWeight: 660,
      // Drawn once for all: gathered from no marks at all, the sheet of letters would have no height.
      characterSet: LETTERS,
    }),
  ];
}
