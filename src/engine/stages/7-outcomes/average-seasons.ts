import type { CropOutcomes } from '../../vocabulary/index.ts';
import type { CropLand } from './land-portions.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';
import { makePlayResult, PLAY_TOTALS, type PlayTotals } from './play-result.ts';
import { playSeason } from './play-season.ts';
import type { PlayParts, PreparedPlay } from './prepare-play.ts';

/** Averages over the season's members at the central parameters. */
export interface SeasonAverage {
  readonly crops: CropOutcomes;
  /** Per field. */
  readonly fieldReachedHa: Float64Array;
  readonly totals: PlayTotals;
}

/** Plays every member once, at the central parameters. Without members nothing is in time, reached or fixed. */
export function averageSeasons(parts: PlayParts, prepared: PreparedPlay): SeasonAverage {
  const { fields, parcels, land, members } = prepared;
  const result = makePlayResult(prepared);
  const sums = makePlayResult(prepared);
  for (const name of PLAY_TOTALS) sums[name] = 0;
  const sownMembers = new Float64Array(parcels.field.length);
  const centre = new Float64Array(prepared.drawWidth);
  for (let member = 0; member < members; member++) {
    playSeason(prepared, member, centre, result);
    addInto(sums.fieldReachedHa, result.fieldReachedHa);
    addInto(sums.fieldNitrogenKg, result.fieldNitrogenKg);
    addInto(sums.fieldGrainT, result.fieldGrainT);
    addSown(sownMembers, sums.parcelLog10PerSeed, result.parcelLog10PerSeed);
    addSown(null, sums.parcelStoreLog10, result.parcelStoreLog10);
    addSown(null, sums.parcelCommunityLog10, result.parcelCommunityLog10);
    for (const name of PLAY_TOTALS) sums[name] += result[name];
  }
  const perMember = (sum: number) => (members > 0 ? sum / members : 0);
  const fieldReachedHa = sums.fieldReachedHa.map(perMember);
  const byRow = (column: Float64Array) => sumByRow(column, fields.shareRow, land.length);
  const perSown = (sum: number, parcel: number) => sum / (sownMembers[parcel] as number);
  const meanOfParcels = (column: Float64Array) => weightByHectares(prepared, column);
  const log10PerSeed = meanOfParcels(sums.parcelLog10PerSeed.map(perSown));
  return {
    fieldReachedHa,
    totals: Object.fromEntries(PLAY_TOTALS.map((name) => [name, perMember(sums[name])])) as PlayTotals,
    crops: {
      seedHa: Float64Array.from(land, ({ seedHa }) => seedHa),
      seedInTimeHa: seedInTimeHa(parts, prepared),
      inoculatedHa: Float64Array.from(land, ({ inoculatedHa }) => inoculatedHa),
      reachedHa: byRow(fieldReachedHa),
      log10PerSeed,
      storeLog10: meanOfParcels(sums.parcelStoreLog10.map(perSown)),
      roadLog10: meanOfParcels(parcels.roadLog10),
      communityLog10: meanOfParcels(sums.parcelCommunityLog10.map(perSown)),
      seedLog10: Float64Array.from(land, ({ inoculatedHa }) => (inoculatedHa > 0 ? ON_SEED_LOG10 : Number.NaN)),
      nitrogenKg: byRow(sums.fieldNitrogenKg.map(perMember)),
      grainT: byRow(sums.fieldGrainT.map(perMember)),
    },
  };
}

function addInto(sums: Float64Array, column: Float64Array): void {
  for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] as number) + (column[i] as number);
}

/** Adds the parcels that were sown in this member, and counts them. */
function addSown(counts: Float64Array | null, sums: Float64Array, column: Float64Array): void {
  for (let i = 0; i < sums.length; i++) {
    const value = column[i] as number;
    if (Number.isNaN(value)) continue;
    sums[i] = (sums[i] as number) + value;
    if (counts) counts[i] = (counts[i] as number) + 1;
  }
}

function sumByRow(column: Float64Array, rowOf: Int32Array, rows: number): Float64Array {
  const sums = new Float64Array(rows);
  for (let i = 0; i < column.length; i++) {
    const row = rowOf[i] as number;
    sums[row] = (sums[row] as number) + (column[i] as number);
  }
  return sums;
}

/** Mean over the inoculated parcels of each row of shares, by hectares; NaN where there is none, or it is never sown. */
function weightByHectares({ fields, parcels, land }: PreparedPlay, column: Float64Array): Float64Array {
  const sums = new Float64Array(land.length);
  const hectares = new Float64Array(land.length);
  for (let parcel = 0; parcel < parcels.field.length; parcel++) {
    if (parcels.inoculated[parcel] === 0) continue;
    const row = fields.shareRow[parcels.field[parcel] as number] as number;
    const ha = parcels.hectares[parcel] as number;
    sums[row] = (sums[row] as number) + ha * (column[parcel] as number);
    hectares[row] = (hectares[row] as number) + ha;
  }
  return sums.map((sum, row) => sum / (hectares[row] as number));
}

/** Hectares whose seed is in hand in time to be sown within the window, whatever the inoculant does. */
function seedInTimeHa({ allocation }: PlayParts, prepared: PreparedPlay): Float64Array {
  const { fields, land, members, windows, firstDay, lastDay, visits, visitDay } = prepared;
  const inTime = new Float64Array(allocation.shares.community.length);
  for (let field = 0; field < fields.zone.length; field++) {
    const row = fields.shareRow[field] as number;
    for (const { hectares, visit } of (land[row] as CropLand).seed) {
      let seasons = 0;
      for (let member = 0; member < members; member++) {
        const at = member * windows + (fields.window[field] as number);
        const day = visit < 0 ? Number.NEGATIVE_INFINITY : (visitDay[member * visits.length + visit] as number);
        if (Math.max(firstDay[at] as number, day + 1) <= (lastDay[at] as number)) seasons++;
      }
      const share = members > 0 ? seasons / members : 0;
      inTime[row] = (inTime[row] as number) + hectares * (fields.part[field] as number) * share;
    }
  }
  return inTime;
}
