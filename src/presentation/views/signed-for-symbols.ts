import type { Plan, Scenario } from '../../engine/index.ts';
import type { MapSymbol } from './map-view.ts';

const DONE_PIXELS = 9;

/** A mark on each community that has signed for something and kept it. */
export function signedForSymbols({ ids, places }: Plan, { handovers }: Scenario): MapSymbol[] {
  return [
    ...new Set(handovers.filter((one) => one.packs > one.returnedPacks).map(({ communityId }) => communityId)),
  ].flatMap((id): MapSymbol[] => {
    const place = places.communityPlace[ids.communities.indexOf(id)] ?? -1;
    const [lon, lat] = [places.placeLon[place], places.placeLat[place]];
    if (lon === undefined || lat === undefined) return [];
    return [{ kind: 'stop-done', position: [lon, lat], text: '', tone: 'ink', size: DONE_PIXELS }];
  });
}
