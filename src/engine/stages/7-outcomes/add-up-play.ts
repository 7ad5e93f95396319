import { PLAY_TOTALS, type PlayResult, SEASON_LOSSES } from './play-result.ts';
import type { PreparedPlay } from './prepare-play.ts';

/** Adds the columns of a play up to fields, zones and totals. */
export function addUpPlay(prepared: PreparedPlay, into: PlayResult): void {
  clear(into);
  addParcels(prepared, into);
  addFields(prepared, into);
  for (let loss = 0; loss < SEASON_LOSSES.length; loss++)
    into.lostHa[SEASON_LOSSES[loss] as (typeof SEASON_LOSSES)[number]] = into.columns.lost[loss] as number;
}

function addParcels({ parcels, crops }: PreparedPlay, into: PlayResult): void {
  const { kept, worth, grainT, plainT, withoutBagsT, grainNKg, plainNKg, withoutBagsNKg, lost } = into.columns;
  // Each by itself: numbers out of a list would be put on the heap at every step.
  let valueHa = 0;
  let residueKg = 0;
  let atMostKg = 0;
  let moreKg = 0;
  let moreGrainT = 0;
  let moreWorth = 0;
  let bagsKg = 0;
  let bagsT = 0;
  for (let parcel = 0; parcel < parcels.field.length; parcel++) {
    const hectares = parcels.hectares[parcel] as number;
    const loss = into.parcelLoss[parcel] as number;
    if (loss >= 0) lost[loss] = (lost[loss] as number) + hectares;
    const grain = grainT[parcel] as number;
    if (Number.isNaN(grain)) continue;
    const field = parcels.field[parcel] as number;
    const crop = parcels.crop[parcel] as number;
    const nitrogenKg = hectares * (grainNKg[parcel] as number);
    valueHa += hectares * (kept[parcel] as number) * (worth[parcel] as number);
    into.fieldGrainT[field] = (into.fieldGrainT[field] as number) + hectares * grain;
    into.fieldNitrogenKg[field] = (into.fieldNitrogenKg[field] as number) + nitrogenKg;
    const residue = (crops.residueKgPerHa[crop] as number) + grain * (crops.residueKgPerT[crop] as number);
    if (!Number.isNaN(residue)) residueKg += hectares * residue;
    if (parcels.inoculated[parcel] === 1 && loss < 0) {
      into.fieldReachedHa[field] = (into.fieldReachedHa[field] as number) + hectares;
      atMostKg += nitrogenKg;
    }
    const withoutBags = withoutBagsT[parcel] as number;
    if (!Number.isNaN(withoutBags)) {
      bagsKg += nitrogenKg - hectares * (withoutBagsNKg[parcel] as number);
      bagsT += hectares * (grain - withoutBags);
    }
    const plain = plainT[parcel] as number;
    if (Number.isNaN(plain)) continue;
    const moreT = hectares * (grain - plain);
    moreKg += nitrogenKg - hectares * (plainNKg[parcel] as number);
    moreGrainT += moreT;
    moreWorth += moreT * (crops.pricePerT[crop] as number);
  }
  into.valueHa = valueHa;
  into.residueNitrogenKg = residueKg;
  into.inoculationAtMostKg = atMostKg;
  into.inoculationNitrogenKg = moreKg;
  into.inoculationGrainT = moreGrainT;
  into.inoculationGrainWorth = moreWorth;
  into.phosphorusNitrogenKg = bagsKg;
  into.phosphorusGrainT = bagsT;
}

/** Grain that is left of nothing by rounding, t: it needs no price. */
const NOISE_T = 1e-9;

function addFields({ fields, crops }: PreparedPlay, into: PlayResult): void {
  const { ownT, ownNKg } = into.columns;
  let reachedHa = 0;
  let farmers = 0;
  let nitrogenKg = 0;
  let allGrainT = 0;
  let leavesKg = 0;
  let earlierKg = 0;
  let withoutKg = 0;
  let withoutT = 0;
  let moreWorth = 0;
  for (let field = 0; field < fields.zone.length; field++) {
    const zone = fields.zone[field] as number;
    const crop = fields.crop[field] as number;
    const grainT = into.fieldGrainT[field] as number;
    const fixedKg = into.fieldNitrogenKg[field] as number;
    const fieldHa = into.fieldReachedHa[field] as number;
    into.zoneNitrogenKg[zone] = (into.zoneNitrogenKg[zone] as number) + fixedKg;
    into.zoneReachedHa[zone] = (into.zoneReachedHa[zone] as number) + fieldHa;
    reachedHa += fieldHa;
    farmers += fieldHa * (fields.farmersPerHa[field] as number);
    nitrogenKg += fixedKg;
    allGrainT += grainT;
    leavesKg -= grainT * (crops.grainNKgPerT[crop] as number);
    earlierKg += grainT * (crops.earlierKgPerT[crop] as number);
    const ownHa = fields.ownHa[field] as number;
    withoutKg += ownHa * (ownNKg[field] as number);
    withoutT += ownHa * (ownT[field] as number);
    const moreT = grainT - ownHa * (ownT[field] as number);
    if (Math.abs(moreT) > NOISE_T) moreWorth += moreT * (crops.pricePerT[crop] as number);
  }
  into.reachedHa = reachedHa;
  into.farmersReached = farmers;
  into.nitrogenKg = nitrogenKg;
  into.grainT = allGrainT;
  into.netNitrogenKg = leavesKg + nitrogenKg;
  into.earlierNitrogenKg = earlierKg;
  into.programmeNitrogenKg = nitrogenKg - withoutKg;
  into.programmeGrainT = allGrainT - withoutT;
  into.programmeGrainWorth = moreWorth;
}

function clear(into: PlayResult): void {
  for (const name of PLAY_TOTALS) into[name] = 0;
  into.columns.lost.fill(0);
  into.fieldReachedHa.fill(0);
  into.fieldNitrogenKg.fill(0);
  into.fieldGrainT.fill(0);
  into.zoneReachedHa.fill(0);
  into.zoneNitrogenKg.fill(0);
}
