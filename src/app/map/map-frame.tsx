import { useEffect, useMemo, useRef, useState } from 'react';
import { useSeason, useView, useWords } from '../state/use-stores.ts';
import { VIEWS } from '../views.ts';
import type { DistrictMap } from './start-map.ts';

/** The map with the picture of the view that is shown. The map itself stays while views come and go. */
export function MapFrame() {
  const words = useWords();
  const place = useRef<HTMLDivElement>(null);
  const { map, state } = useDistrictMap(place);
  usePictures(map);
  const view = useView((of) => of.view);
  const { Legend } = VIEWS[view];
  return (
    <div className="map-frame">
      <div className="map" ref={place} />
      {state !== 'drawn' && (
        <p className="map-state note" role="status">
          {state === 'failed' ? words.map.failed : words.map.loading}
        </p>
      )}
      <div className="legend">
        <Legend />
      </div>
    </div>
  );
}

type MapState = 'loading' | 'drawn' | 'failed';

/** Loads the map library after the page is drawn, and starts it once. */
function useDistrictMap(place: React.RefObject<HTMLDivElement | null>) {
  const [map, setMap] = useState<DistrictMap | null>(null);
  const [state, setState] = useState<MapState>('loading');
  const label = useWords().map.label;
  const choose = useChoose();
  const latest = useRef({ label, choose });
  latest.current = { label, choose };
  useEffect(() => {
    const container = place.current;
    if (container === null) return;
    let gone = false;
    let started: DistrictMap | null = null;
    const start = async () => {
      const { startMap } = await import('./start-map.ts');
      if (gone) return;
      started = await startMap(container, latest.current.label, (index) => latest.current.choose(index));
      if (gone) return started.remove();
      setMap(started);
      setState('drawn');
    };
    start().catch(() => {
      if (!gone) setState('failed');
    });
    return () => {
      gone = true;
      started?.remove();
      setMap(null);
    };
  }, [place]);
  return { map, state };
}

/** A click chooses the community and its zone; a click on what is chosen, or beside all, lets go. */
function useChoose() {
  const scenario = useSeason((season) => season.scenario);
  const chosen = useView((view) => view.community);
  const chooseCommunity = useView((view) => view.chooseCommunity);
  return (index: number | null) => {
    const community = index === null ? undefined : scenario?.communities[index];
    if (community === undefined || community.id === chosen) chooseCommunity(null, null);
    else chooseCommunity(community.id, community.zoneId);
  };
}

function usePictures(map: DistrictMap | null): void {
  const words = useWords();
  const season = useSeason();
  const view = useView();
  const picture = useMemo(() => VIEWS[view.view].picture(season, view, words), [season, view, words]);
  const { scenario } = season;
  const { zone, community, theme } = view;
  useEffect(() => {
    if (map === null || scenario === null) return;
    map.showLand(scenario);
    map.showPicture(picture);
  }, [map, scenario, picture]);
  useEffect(() => {
    if (map && scenario) map.showChosen(zone, community);
  }, [map, scenario, zone, community]);
  const drawnTheme = useRef(theme);
  useEffect(() => {
    if (map === null || drawnTheme.current === theme) return;
    drawnTheme.current = theme;
    map.recolour();
  }, [map, theme]);
}
