import 'maplibre-gl/dist/maplibre-gl.css';
import faceAddress from '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2?url';
import { type GeoJSONSource, Map as MapLibre, NavigationControl, ScaleControl, setWorkerUrl } from 'maplibre-gl';
import workerAddress from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import type { Scenario } from '../../engine/index.ts';
import { districtBounds, type MapPicture, type MapSymbol } from '../../presentation/views/map-view.ts';
import { baseStyle, type DistrictSource, MAP_FACE } from './base-style.ts';
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
import { MAP_IMAGE_PIXEL_RATIO, mapImage } from './map-images.ts';
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
  // Asked for, not put in at once: a tile of the style that went can still ask the style that comes.
  map.setMissingStyleImageResolver((id) => {
    const image = mapImage(id);
    if (image && !map.hasImage(id)) map.addImage(id, image, { pixelRatio: MAP_IMAGE_PIXEL_RATIO });
  });
  await new Promise<void>((resolve) => map.once('load', () => resolve()));
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

class District implements DistrictMap {
  private readonly map: MapLibre;
  private scenario: Scenario | null = null;
  private picture: MapPicture | null = null;
  private chosen: readonly [string | null, string | null] = [null, null];
  private overlay: Promise<MarksOverlay> | null = null;
  /** Between two styles nothing can be drawn; what is shown then is remembered and drawn with the next. */
  private isStyled = true;

  constructor(map: MapLibre) {
    this.map = map;
    map.on('style.load', () => {
      this.isStyled = true;
      this.drawLand();
      this.drawPicture(null);
      this.drawChosen();
    });
  }

  showLand(scenario: Scenario): void {
    if (scenario === this.scenario) return;
    const isOther = scenario.name !== this.scenario?.name;
    this.scenario = scenario;
    this.picture = null;
    this.drawLand();
    const bounds = districtBounds(scenario);
    if (isOther && bounds) {
      this.map.fitBounds([...bounds], { padding: { top: 12, left: 12, right: 12, bottom: 56 }, animate: false });
    }
  }

  showPicture(picture: MapPicture): void {
    const before = this.picture;
    this.picture = picture;
    this.drawPicture(before);
  }

  showChosen(zoneId: string | null, communityId: string | null): void {
    this.chosen = [zoneId, communityId];
    this.drawChosen();
  }

  recolour(): void {
    this.isStyled = false;
    this.map.setStyle(baseStyle(tokenColour), { diff: false });
  }

  remove(): void {
    this.map.remove();
  }

  private drawLand(): void {
    const { scenario } = this;
    if (scenario === null || !this.isStyled) return;
    this.map.removeFeatureState({ source: 'communities' });
    this.fill('communities', communityFeatures(scenario));
    this.fill('borders', borderFeatures(scenario));
    this.fill('roads', roadFeatures(scenario));
  }

  /** @param drawn the picture the map shows; only what differs from it is drawn */
  private drawPicture(drawn: MapPicture | null): void {
    const { scenario, picture } = this;
    if (scenario === null || picture === null || picture === drawn || !this.isStyled) return;
    if (picture.fills !== drawn?.fills) this.colour(picture);
    if (picture.hatches !== drawn?.hatches) this.fill('hatches', hatchFeatures(scenario, picture.hatches));
    if (picture.lines !== drawn?.lines) this.fill('lines', lineFeatures(picture.lines, tokenColour));
    if (picture.labels !== drawn?.labels) this.fill('labels', labelFeatures(picture.labels));
    if (picture.symbols !== drawn?.symbols) this.mark(picture.symbols);
  }

  private drawChosen(): void {
    if (this.scenario === null || !this.isStyled) return;
    this.fill('chosen', chosenFeatures(this.scenario, ...this.chosen));
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
