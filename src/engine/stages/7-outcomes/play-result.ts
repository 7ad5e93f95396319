import type { PreparedPlay } from './prepare-play.ts';

/** What a play adds up over the plan: hectares, people, kg, t, money. */
export const PLAY_TOTALS = [
  'reachedHa',
  /** Inoculated hectares, each by the yield kept when late times the worth of its live rhizobia. */
  'valueHa',
  'farmersReached',
  /** Nitrogen fixed on all land sown, by Herridge et al. 2022. */
  'nitrogenKg',
  /** Of it, what would not be fixed had the programme brought nothing. */
  'programmeNitrogenKg',
  /** Of it, what the same land sown on the same days would not fix without its inoculant. */
  'inoculationNitrogenKg',
  /** The same where no field reached held rhizobia of its own: all that is fixed on the hectares reached. */
  'inoculationAtMostKg',
  /** Fixed, less what leaves the fields with the grain; below nought where the soil is drawn on. */
  'netNitrogenKg',
  /** In residues of the crops with coefficients (IPCC): another quantity than nitrogen fixed. */
  'residueNitrogenKg',
  /** Fixed by the method of 2008, for comparison. */
  'earlierNitrogenKg',
  'grainT',
  'programmeGrainT',
  'inoculationGrainT',
  /** Grain owed to the programme and to inoculation, at the prices given; NaN where a price it needs is missing. */
  'programmeGrainWorth',
  'inoculationGrainWorth',
  /** Nitrogen and grain that the same land would not give without its fertiliser. */
  'phosphorusNitrogenKg',
  'phosphorusGrainT',
] as const;
export type PlayTotal = (typeof PLAY_TOTALS)[number];
export type PlayTotals = Record<PlayTotal, number>;

/** What one play gives. Overwritten by every play. */
export interface PlayResult extends PlayTotals {
  /** Inoculated hectares that are not reached, by what kept them from it (see PastSeasons). */
  readonly lostHa: LostHectares;
  /** Per field. */
  readonly fieldReachedHa: Float64Array;
  readonly fieldNitrogenKg: Float64Array;
  readonly fieldGrainT: Float64Array;
  /** Per zone, the last for outside all zones. */
  readonly zoneReachedHa: Float64Array;
  readonly zoneNitrogenKg: Float64Array;
  /** Per parcel: log10 rhizobia per seed at sowing and log10 lost in either store; NaN where none, or not sown. */
  readonly parcelLog10PerSeed: Float64Array;
  readonly parcelStoreLog10: Float64Array;
  readonly parcelCommunityLog10: Float64Array;
  /** Per parcel, index into SEASON_LOSSES, or -1 where nothing inoculated is lost. */
  readonly parcelLoss: Int8Array;
  /** The draw's numbers in the units of the play. */
  readonly factors: DrawnFactors;
  readonly columns: PlayColumns;
}

/** What a play works with on its way, made once so that a play makes nothing. */
export interface PlayColumns {
  /** Per visit, day of the hand-over; per parcel, day of sowing; NaN where that never comes. */
  readonly handedDay: Float64Array;
  readonly sownDay: Float64Array;
  /** Per parcel: yield kept by sowing when it is sown, 0 to 1, and worth of the rhizobia, 0 to 1. */
  readonly kept: Float64Array;
  readonly worth: Float64Array;
  /** Per parcel, t per ha: as it is, NaN where not sown; without its inoculant, and without its fertiliser, NaN where that is the same. */
  readonly grainT: Float64Array;
  readonly plainT: Float64Array;
  readonly withoutBagsT: Float64Array;
  /** Per parcel, kg per ha: fixed by each of them. */
  readonly grainNKg: Float64Array;
  readonly plainNKg: Float64Array;
  readonly withoutBagsNKg: Float64Array;
  /** Per field, per ha: what own seed would give had the programme brought nothing, t and kg of nitrogen. */
  readonly ownT: Float64Array;
  readonly ownNKg: Float64Array;
  /** Hectares lost, as in SEASON_LOSSES. */
  readonly lost: Float64Array;
}

/** What keeps inoculated land from being reached, in the order of a season. */
export const SEASON_LOSSES = ['noOnset', 'late', 'hot', 'waiting', 'weak'] as const;
type SeasonLoss = (typeof SEASON_LOSSES)[number];
export type LostHectares = Record<SeasonLoss, number>;
/** What a draw's numbers come to; nitrogen per crop, fixed over the estimate. */
export interface DrawnFactors {
  yield: number;
  packLoss: number;
  seedLoss: number;
  roadLoss: number;
  delayDays: number;
  readonly nitrogen: Float64Array;
}

export function makePlayResult({ fields, parcels, visits, zones, crops }: PreparedPlay): PlayResult {
  const perField = () => new Float64Array(fields.zone.length);
  const perParcel = () => new Float64Array(parcels.field.length);
  // NaN until it is played: a number that is no whole one from the start is kept in place and never boxed anew.
  const unplayed = Number.NaN;
  return {
    ...(Object.fromEntries(PLAY_TOTALS.map((name) => [name, unplayed])) as PlayTotals),
    lostHa: { noOnset: unplayed, late: unplayed, hot: unplayed, waiting: unplayed, weak: unplayed },
    fieldReachedHa: perField(),
    fieldNitrogenKg: perField(),
    fieldGrainT: perField(),
    zoneReachedHa: new Float64Array(zones + 1),
    zoneNitrogenKg: new Float64Array(zones + 1),
    parcelLog10PerSeed: perParcel(),
    parcelStoreLog10: perParcel(),
    parcelCommunityLog10: perParcel(),
    parcelLoss: new Int8Array(parcels.field.length),
    factors: {
      yield: unplayed,
      packLoss: unplayed,
      seedLoss: unplayed,
      roadLoss: unplayed,
      delayDays: unplayed,
      nitrogen: new Float64Array(crops.names.length).fill(1),
    },
    columns: {
      handedDay: new Float64Array(visits.length),
      sownDay: perParcel(),
      kept: perParcel(),
      worth: perParcel(),
      grainT: perParcel(),
      plainT: perParcel(),
      withoutBagsT: perParcel(),
      grainNKg: perParcel(),
      plainNKg: perParcel(),
      withoutBagsNKg: perParcel(),
      ownT: perField(),
      ownNKg: perField(),
      lost: new Float64Array(SEASON_LOSSES.length),
    },
  };
}
