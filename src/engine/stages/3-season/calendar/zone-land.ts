import { log10 } from '../../../numerics/elementary.ts';
import { CROP_FACTS, cropFact } from '../../../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../../../reference/inoculation-practice.ts';
import type { SurvivalSet } from '../../../reference/survival-sets.ts';
import { depotCelsius } from '../../../science/depot-store.ts';
import { type PreparedLife, prepareLife } from '../../../science/reach.ts';
import { cellsPerSeed } from '../../../science/seed-rate.ts';
import { storeCelsius, survivalSet } from '../../../science/survival.ts';
import type { Crop } from '../../../vocabulary/crops.ts';
import type { Scenario, Store } from '../../../vocabulary/scenario.ts';
import type { Needs } from '../../../vocabulary/stage-results/needs.ts';
import type { Places } from '../../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook, SowingWindow } from '../../../vocabulary/stage-results/season.ts';
import type { Product } from '../../../vocabulary/supply.ts';

/** Land of one zone that is sown with one crop from one kind of store, and the life of its inoculant. */
export interface LandPart {
  readonly hectares: number;
  readonly window: SowingWindow;
  readonly delayLossPerDay: number;
  readonly delayFreeDays: number;
  readonly life: PreparedLife;
  /** Index into the survival sets of the calendar. */
  readonly set: number;
}

export interface ZoneLand {
  /** Per zone and, last, for land outside all zones. */
  readonly parts: readonly (readonly LandPart[])[];
  readonly sets: readonly SurvivalSet[];
}

/** Planned land by zone, crop, store and weather place, each with the reference product of its crop. */
export function layZoneLand(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  depotOfZone: Int32Array,
): ZoneLand {
  const zones = scenario.zones.length + 1;
  const sets = new SetList();
  const groups = groupLand(scenario, places, season, needs);
  const parts: LandPart[][] = Array.from({ length: zones }, () => []);
  for (const { zone, crop, store, station, product, hectares } of groups) {
    const name = scenario.crops[crop] as Crop;
    const pack = scenario.products[product] ?? null;
    const set = pack ? survivalSet(pack, name) : survivalSet(NO_PRODUCT, name);
    const depot = scenario.depots[depotOfZone[zone] as number] ?? null;
    const depotStation = season.siteStation[Math.max(0, depotOfZone[zone] as number)] ?? 0;
    const atDepot = (airC: number) => (depot ? depotCelsius(depot, false, airC) : airC);
    parts[zone]?.push({
      hectares,
      window: season.windows[zone * scenario.crops.length + crop] as SowingWindow,
      delayLossPerDay: cropFact(name, 'delayLossPerDay', scenario.assumptions).value,
      delayFreeDays: CROP_FACTS[name].delayFreeDays,
      set: sets.indexOf(set),
      life: prepareLife({
        log10PerSeed: log10PerSeed(scenario, pack, needs.seedsPerKg[crop] as number),
        survival: set,
        depotCelsius: meanAir(season, depotStation).subarray(0, season.planningDays).map(atDepot),
        communityCelsius: meanAir(season, station).map((airC) => storeCelsius(store, airC)),
        floorCellsPerSeed: scenario.policy.cellsPerSeedFloor,
      }),
    });
  }
  return { parts, sets: sets.sets };
}

/** Of a crop for which no product is offered nothing is known; the cautious set stands in. */
const NO_PRODUCT = { carrierSterile: null, carrier: null } as Product;

interface LandGroup {
  readonly zone: number;
  readonly crop: number;
  readonly store: Store;
  readonly station: number;
  readonly product: number;
  hectares: number;
}

function groupLand(scenario: Scenario, places: Places, season: SeasonOutlook, needs: Needs): LandGroup[] {
  const groups = new Map<string, LandGroup>();
  needs.community.forEach((community, row) => {
    const zone = (needs.zone[row] as number) < 0 ? scenario.zones.length : (needs.zone[row] as number);
    const crop = needs.crop[row] as number;
    const store = scenario.communities[community]?.store ?? 'none';
    const site = scenario.depots.length + (places.communityPlace[community] as number);
    const station = season.siteStation[site] ?? 0;
    const key = `${zone} ${crop} ${store} ${station}`;
    const known = groups.get(key);
    const hectares = needs.plannedHa[row] as number;
    if (known) known.hectares += hectares;
    else groups.set(key, { zone, crop, store, station, product: needs.product[row] as number, hectares });
  });
  return [...groups.values()];
}

/** By the label, else by the best test of the product's lots; NaN where nobody states a count or a dose. */
function log10PerSeed({ lots }: Scenario, product: Product | null, seedsPerKg: number): number {
  if (product === null) return Number.NaN;
  const tested = lots.flatMap((lot) => (lot.productId === product.id ? (lot.testedCountPerG ?? []) : []));
  const countPerG = product.countPerG ?? (tested.length > 0 ? Math.max(...tested) : Number.NaN);
  const dose = product.doseGPerKg ?? Number.NaN;
  return log10(cellsPerSeed(countPerG, dose, 1e6 / seedsPerKg, INOCULATION_PRACTICE.adhesion.value));
}

/** Middle of the day's expected extremes at a weather place, °C per outlook day. */
function meanAir({ tminC, tmaxC, outlookDays }: SeasonOutlook, station: number): Float64Array {
  const from = station * outlookDays;
  return Float64Array.from(
    { length: outlookDays },
    (_, day) => ((tminC[from + day] as number) + (tmaxC[from + day] as number)) / 2,
  );
}

/** Survival sets, each once. */
class SetList {
  readonly sets: SurvivalSet[] = [];
  private readonly index = new Map<string, number>();

  indexOf(set: SurvivalSet): number {
    const key = `${set.name} ${set.rateFactor}`;
    const known = this.index.get(key);
    if (known !== undefined) return known;
    this.index.set(key, this.sets.length);
    return this.sets.push(set) - 1;
  }
}
