import 'maplibre-gl/dist/maplibre-gl.css';
import faceAddress from '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2?url';
import { type GeoJSONSource, Map as MapLibre, NavigationControl, ScaleControl, setWorkerUrl } from 'maplibre-gl';
import workerAddress from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import type { Scenario } from '../../engine/index.ts';
import { districtBounds, type MapPicture, type MapSymbol } from '../../presentation/views/map-view.ts';
import { baseStyle, type DistrictSource, MAP_FACE } from './base-style.ts';
import { depotImage, HATCH_PIXEL_RATIO, HATCHES, hatchImage } from './hatch-images.ts';
import {
  borderFeatures,
  chosenFeatures,
  communityFeatures,
  hatchFeatures,
  labelFeatures,
  lineFeatures,
  roadFeatures,
  symbolFeatures,
} from './land-features.ts';
import { tokenColour } from './map-colours.ts';
import type { MarksOverlay } from './marks-overlay.ts';

/** The map of a district, which outlives the views: they only hand it pictures. */
export interface DistrictMap {
  /** Draws a district's land; goes there where it is another district. */
  showLand(scenario: Scenario): void;
  showPicture(picture: MapPicture): void;
  showChosen(zoneId: string | null, communityId: string | null): void;
  /** Draws all anew in the colours of the theme that now holds. */
  recolour(): void;
  remove(): void;
}

/** Marks that move or carry text go onto the overlay, which is loaded when the first of them comes. */
const onOverlay = ({ kind }: MapSymbol) => kind !== 'depot';

/**
 * Starts the map in an element.
 *
 * @param onChoose told the index of the community that was clicked, or null for none
 * @throws where the browser gives no WebGL
 */
export async function startMap(
  container: HTMLElement,
  label: string,
  onChoose: (community: number | null) => void,
): Promise<DistrictMap> {
  setWorkerUrl(workerAddress);
  await loadMapFace();
  const map = new MapLibre({
    container,
    style: baseStyle(tokenColour),
    attributionControl: false,
    dragRotate: false,
    pitchWithRotate: false,
    maxPitch: 0,
    fadeDuration: 0,
    locale: { 'Map.Title': label },
  });
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  map.addControl(new NavigationControl({ showCompass: false }), 'top-right');
  map.addControl(new ScaleControl({ unit: 'metric', maxWidth: 80 }), 'bottom-right');
  await new Promise<void>((resolve) => map.once('load', () => resolve()));
  addImages(map);
  const district = new District(map);
  map.on('click', (event) => {
    const [found] = map.queryRenderedFeatures(event.point, { layers: ['communities', 'community-points'] });
    onChoose(typeof found?.id === 'number' ? found.id : null);
  });
  map.on('mousemove', (event) => {
    const [found] = map.queryRenderedFeatures(event.point, { layers: ['communities', 'community-points'] });
    map.getCanvas().style.cursor = found ? 'pointer' : '';
  });
  return district;
}

/** The page's own face under a name that tells the map library its weight; loaded before the first label is drawn. */
async function loadMapFace(): Promise<void> {
  const face = new FontFace(MAP_FACE, `url(${faceAddress})`, { weight: '200 800' });
  document.fonts.add(await face.load());
}

function addImages(map: MapLibre): void {
  for (const hatch of HATCHES) {
    map.addImage(`hatch-${hatch}`, hatchImage(hatch), { pixelRatio: HATCH_PIXEL_RATIO });
  }
  map.addImage('depot', depotImage(), { pixelRatio: HATCH_PIXEL_RATIO });
}

class District implements DistrictMap {
  private readonly map: MapLibre;
  private scenario: Scenario | null = null;
  private picture: MapPicture | null = null;
  private chosen: readonly [string | null, string | null] = [null, null];
  private overlay: Promise<MarksOverlay> | null = null;

  constructor(map: MapLibre) {
    this.map = map;
  }

  showLand(scenario: Scenario): void {
    if (scenario === this.scenario) return;
    const isOther = scenario.name !== this.scenario?.name;
    this.scenario = scenario;
    this.picture = null;
    this.map.removeFeatureState({ source: 'communities' });
    this.fill('communities', communityFeatures(scenario));
    this.fill('borders', borderFeatures(scenario));
    this.fill('roads', roadFeatures(scenario));
    const bounds = districtBounds(scenario);
    if (isOther && bounds) {
      this.map.fitBounds([...bounds], { padding: { top: 12, left: 12, right: 12, bottom: 56 }, animate: false });
    }
  }

  showPicture(picture: MapPicture): void {
    const before = this.picture;
    this.picture = picture;
    if (this.scenario === null || picture === before) return;
    if (picture.fills !== before?.fills) this.colour(picture);
    if (picture.hatches !== before?.hatches) this.fill('hatches', hatchFeatures(this.scenario, picture.hatches));
    if (picture.lines !== before?.lines) this.fill('lines', lineFeatures(picture.lines, tokenColour));
    if (picture.labels !== before?.labels) this.fill('labels', labelFeatures(picture.labels));
    if (picture.symbols !== before?.symbols) this.mark(picture.symbols);
  }

  showChosen(zoneId: string | null, communityId: string | null): void {
    this.chosen = [zoneId, communityId];
    if (this.scenario) this.fill('chosen', chosenFeatures(this.scenario, zoneId, communityId));
  }

  recolour(): void {
    const { scenario, picture } = this;
    this.map.setStyle(baseStyle(tokenColour), { diff: false });
    this.map.once('style.load', () => {
      addImages(this.map);
      this.picture = null;
      this.scenario = null;
      if (scenario === null) return;
      const { center, zoom } = { center: this.map.getCenter(), zoom: this.map.getZoom() };
      this.showLand(scenario);
      this.map.jumpTo({ center, zoom });
      if (picture) this.showPicture(picture);
      this.showChosen(...this.chosen);
    });
  }

  remove(): void {
    this.map.remove();
  }

  private fill(source: DistrictSource, data: ReturnType<typeof communityFeatures>): void {
    this.map.getSource<GeoJSONSource>(source)?.setData(data);
  }

  private colour({ fills }: MapPicture): void {
    const colours = new Map<string, string>();
    const colourOf = (tone: string): string => {
      const known = colours.get(tone) ?? tokenColour(tone);
      colours.set(tone, known);
      return known;
    };
    this.scenario?.communities.forEach((_, id) => {
      const tone = fills[id] ?? null;
      this.map.setFeatureState({ source: 'communities', id }, { colour: tone === null ? null : colourOf(tone) });
    });
  }

  private mark(symbols: readonly MapSymbol[]): void {
    this.fill('symbols', symbolFeatures(symbols.filter((symbol) => !onOverlay(symbol))));
    const marks = symbols.filter(onOverlay);
    if (marks.length === 0 && this.overlay === null) return;
    this.overlay ??= import('./marks-overlay.ts').then(({ startOverlay }) => startOverlay(this.map));
    void this.overlay.then((overlay) => overlay.show(marks));
  }
}
