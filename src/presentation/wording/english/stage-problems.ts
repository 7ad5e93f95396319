import type { UnreachableReason } from '../../../engine/index.ts';
import { inFile } from './in-file.ts';
import type { ProblemWordings } from './problem-wording.ts';
import { UNREACHABLE_WORDING } from './reasons.ts';

/** Problems that a stage after intake meets. */
export const STAGE_PROBLEMS = {
  // 2-places
  E2001: {
    what: (p) =>
      `The polygon of ${p.facts['kind']} ${p.facts['id']} crosses itself. It was repaired: ${p.facts['beforeHa']} ha as sent, ${p.facts['afterHa']} ha after.`,
    remedy: 'Look at the repaired outline on the map; correct the polygon where it is wrong.',
  },
  E2002: {
    what: (p) => `The polygon of ${p.facts['kind']} ${p.facts['id']} covers no ground. It is taken as a point.`,
    remedy: 'Draw the polygon, or give a point.',
  },
  E2003: {
    what: (p) =>
      `${p.facts['outsidePercent']} percent of community ${p.facts['id']} lies outside all zones; that part belongs to no zone.`,
    remedy: 'Name the zone in zone_id, or correct the outline of the community or the zones.',
  },
  E2004: {
    what: (p) =>
      `Community ${p.facts['id']} names zone ${p.value}, but only ${p.facts['sharePercent']} percent of it lies there. The zone named is used.`,
    remedy: 'Check zone_id and the outlines.',
  },
  E2005: {
    what: (p) =>
      `Community ${p.facts['id']} plans ${p.facts['plannedHa']} ha of legume on ${p.facts['areaHa']} ha of land. The plan is used as given.`,
    remedy: 'Check the planned hectares and the outline.',
  },
  E2006: {
    what: (p) =>
      `The road closure at latitude ${p.facts['lat']}, longitude ${p.facts['lon']} from ${p.facts['from']} to ${p.facts['to']} is not used: no road within 2 km, or a date that cannot be read.`,
    remedy: 'Place the closure on a road and give its dates as YYYY-MM-DD.',
  },
  E2007: {
    what: (p) =>
      `Zones overlap in community ${p.facts['id']}: their parts add up to ${p.facts['percent']} percent of it. They are scaled to 100.`,
    remedy: 'Correct the outlines of the zones so that none covers another.',
  },
  E2008: {
    what: (p) =>
      `The roads lie in ${p.facts['pieces']} pieces that do not join; the longest holds ${p.facts['longestKm']} of ${p.facts['totalKm']} km.`,
    remedy: 'Join road lines by a shared vertex where one can drive from one to the other.',
  },
  E2009: {
    what: (p) =>
      `Depot ${p.facts['id']} (latitude ${p.facts['lat']}, longitude ${p.facts['lon']}) joins no road that its vehicles may use; the nearest road is ${p.facts['km']} km away. No vehicle leaves it.`,
    remedy:
      'Check that latitude and longitude are not swapped; place the depot on land within 2 km of a road, or add its road.',
  },
  E2010: {
    what: (p) =>
      `No vehicle reaches community ${p.facts['id']}: ${UNREACHABLE_WORDING[p.facts['reason'] as UnreachableReason]}.`,
    remedy: 'Give a hand-over point that can be reached, add the missing road, or use a vehicle that may use it.',
  },
  E2011: { what: () => 'No roads are given: no place can be reached.', remedy: 'Give roads.geojson.' },
  // 3-season
  E3001: {
    what: () =>
      'No weather is given: the air is taken as 20 °C at its coolest and 34 °C at its hottest every day, roads as passable, and no onset of rains is expected.',
    remedy: 'Give daily weather of the nearest station, best of twenty years and more, or sowing windows by date.',
  },
  E3002: {
    what: (p) =>
      `The nearest weather station, ${p.facts['station']}, is ${p.facts['km']} km from ${p.facts['zone'] || 'the communities outside all zones'}; beyond ${p.facts['limitKm']} km rain may differ.`,
    remedy: 'Add a nearer station, or read onset and roads there with care.',
  },
  E3003: {
    what: () =>
      'No past season is recorded on nine days in ten at every station used: no onset can be expected from the past.',
    remedy: 'Give more years of daily rain, or sowing windows by date.',
  },
  E3004: {
    what: (p) =>
      `The season's chances rest on ${p.facts['seasons']} past seasons; ${p.facts['enough']} or more give steady ones.`,
    remedy: 'Give more years of daily rain; read the chances as rough.',
  },
  E3005: {
    what: () => 'No season is named: the onset of rains is looked for in the planning period itself.',
    remedy: 'Name the season with searchFrom and searchTo in scenario.json.',
  },
  E3006: {
    what: (p) =>
      `In every one of the ${p.facts['seasons']} past seasons the rains had come by now; all of them count, though this season is already later.`,
    remedy: 'Expect a later onset than the chances say; follow the forecast.',
  },
  E3007: {
    what: (p) =>
      `On ${p.facts['days']} station days neither record, forecast nor past years tell the air: 20 and 34 °C are taken.`,
    remedy: 'Give tmin_c and tmax_c for past years.',
  },
  E3008: {
    what: (p) =>
      `No sowing day can be given for ${p.value} in ${p.facts['zones']} zones: no onset or end of season is known there.`,
    remedy: 'Give more years of daily rain, or a sowing window by date in crop-windows.csv.',
  },
  E3009: {
    what: (p) => `Station ${p.facts['station']} has no complete past season and is not used.`,
    remedy: 'Give its earlier years, or leave it out.',
  },
  E3010: {
    what: (p) =>
      `On ${p.facts['days']} planning days neither forecast nor past seasons tell the rain: roads are taken as passable.`,
    remedy: 'Give rain of past years; ask the road keepers before leaving.',
  },
  // 4-needs
  E4001: {
    what: ({ facts }) =>
      `No inoculant names ${facts['crop']} on its label: ${facts['hectares']} planned hectares cannot be inoculated.${
        facts['similar'] ? ` ${facts['similar']} is for legumes of the same group of rhizobia.` : ''
      }`,
    remedy: 'Add an inoculant for this crop, or ask the maker or the regulator whether one at hand serves it.',
  },
  E4002: {
    what: ({ facts }) =>
      `Growers of ${facts['community']} hold ${facts['ownKg']} kg of ${facts['crop']} seed; their planned land takes ${facts['needKg']} kg.`,
    remedy: 'Check both figures. They are used as given, and no seed is planned for this crop there.',
  },
  E4003: {
    what: ({ facts }) =>
      `${facts['product']} puts ${facts['cells']} rhizobia on a seed of ${facts['crop']} by its label, fewer than ${facts['floor']}.`,
    remedy:
      'Check the count, the dose and the thousand-seed weight; ask for a richer product, or for consent to a higher dose.',
  },
  // 5-allocation
  E5001: {
    what: (p) => `Lot ${p.facts['lot']} expired on ${p.value} and is not given.`,
    remedy: 'Replace it; do not use inoculant or seed past its date.',
  },
  E5002: {
    what: (p) =>
      `Lot ${p.facts['lot']} expires on ${p.value}: the chance of sowing before is ${p.facts['limit']} percent. It is not given.`,
    remedy: 'Use it elsewhere, where sowing is earlier, or replace it.',
  },
  E5003: {
    what: (p) => `Lot ${p.facts['lot']} is on hold and is not given.`,
    remedy: 'A named person clears it on stated evidence, as a decision.',
  },
  E5004: {
    what: (p) => `Lot ${p.facts['lot']} awaits its test and is not given.`,
    remedy: 'Enter the result, and set the status to cleared if it passes.',
  },
  E5005: {
    what: (p) =>
      `Lot ${p.facts['lot']} holds ${p.value} rhizobia per g; the minimum is ${p.facts['limit']}. It is not given.`,
    remedy: 'Replace the lot. A failed lot is not tested again until it passes.',
  },
  E5006: {
    what: (p) =>
      `Lot ${p.facts['lot']} germinates at ${p.value} percent; the minimum is ${p.facts['limit']} percent. It is not given.`,
    remedy: 'Replace the lot.',
  },
  E5007: {
    what: (p) => `Lot ${p.facts['lot']} is treated seed whose label does not allow inoculant. It is not given.`,
    remedy: 'Ask for untreated seed. Never eat treated seed or feed it to animals; follow its label.',
  },
  E5008: {
    what: (p) => `Lot ${p.facts['lot']} arrives on ${p.value}, after the last planning day.`,
    remedy: 'Ask for it earlier, or plan later days.',
  },
  E5009: {
    what: (p) => `No community plans a crop that lot ${p.facts['lot']} (${p.value}) serves.`,
    remedy: 'Check the crops of the product.',
  },
  E5010: {
    what: (p) => `Lot ${p.facts['lot']} stands at depot ${p.value}, which is not in the depots file.`,
    remedy: 'Correct depot_id, or add the depot.',
  },
  E5011: {
    what: (p) => `Neither label nor test states a count for inoculant lot ${p.facts['lot']}. It is not given.`,
    remedy: 'Enter count_per_g from the label, or tested_count_per_g from the test.',
  },
  E5012: {
    what: (p) => `Lot ${p.facts['lot']} arrives on ${p.value}; its packs leave from that day on.`,
    remedy: 'Nothing to do, unless it comes later still.',
  },
  E5013: {
    what: (p) => `The label of ${p.facts['product']} states no dose, so its packs are not given.`,
    remedy: 'Enter dose_g_per_kg or dose_ml_per_kg from the label.',
  },
  E5014: {
    what: (p) => `Packs of ${p.facts['product']} state no volume; 2 L of box per kg is taken.`,
    remedy: 'Measure a pack and enter litres_per_pack.',
  },
  E5015: {
    what: (p) =>
      `The cool store of depot ${p.facts['depot']} holds ${p.facts['roomLitres']} L; ${p.facts['litres']} L of inoculant is there. ${p.facts['lots']} lots, those that expire last, are taken to stand in a room.`,
    remedy: 'Find cool room for them, or deliver them first; packs for the next day are cooled the evening before.',
  },
  E5020: {
    what: (p) =>
      `A decision (${p.facts['kind']}) speaks of ${p.facts['crop']} in community ${p.value}${p.facts['lot'] === '' ? '' : ` and lot ${p.facts['lot']}`}, which this plan does not hold. It has no effect.`,
    remedy: 'Correct or undo the decision.',
  },
  E5021: {
    what: (p) =>
      `A decision gives ${p.facts['community']} ${p.facts['askedKg']} kg of seed to have or to coat (${p.facts['commodity']}, ${p.facts['crop']}); the stock meets ${p.facts['givenKg']} kg.`,
    remedy: 'Lower the share held by hand, or add stock.',
  },
  E5022: {
    what: (p) => `No way to share out ${p.facts['commodity']} was found.`,
    remedy: 'Check that packs, hectares and seed rates are of a believable size.',
  },
  E5023: {
    what: (p) =>
      `Growers are not told for ${p.facts['rows']} communities and crops; ${p.facts['commodity']} is made equal over communities instead.`,
    remedy: 'Enter farmers or <crop>_growers, or set equalOver to community.',
  },
  E5025: {
    what: (p) => `${p.value} packs of ${p.facts['lot']} are on hold and are not given out.`,
    remedy: 'A named person clears them on stated evidence.',
  },
  E5024: {
    what: (p) =>
      `${p.facts['rows']} past hand-overs are taken off the lots, as they were counted when they came, and off what their communities still need.`,
    remedy: 'Nothing needs doing, unless the lots file already counts what is left: then take these rows out of it.',
  },
  E5026: {
    what: (p) => `There is fertiliser for ${p.facts['given']} of the ${p.facts['asked']} ha with seed that it is for.`,
    remedy: 'The order list says what would serve the rest. Seed and inoculant do not wait for it.',
  },
  // 6-delivery
  E6001: {
    what: inFile(
      'the decision ({kind}) names {value}, which is no vehicle, community or planning day of this scenario; it has no effect or lets nothing go',
    ),
    remedy: 'Correct the decision, or undo it.',
  },
  E6002: {
    what: inFile('{community} was promised {promised}, and part of its goods comes on another day or not at all'),
    remedy: 'Tell the community the new date, free a vehicle for the promised day, or state a higher promisePrice.',
  },
  E6003: {
    what: inFile('the depot {value} is to send goods but has no vehicle'),
    remedy: 'Give it a vehicle, or move its stock to a depot that has one.',
  },
  E6004: {
    what: ({ facts }) =>
      `${facts['loads']} loads of the first round could not be held to their vehicle and day in the second, and were planned anew.`,
    remedy: 'Nothing needs doing; look at the days of the communities concerned before promising them.',
  },
  E6010: {
    what: ({ facts }) =>
      `${facts['stops']} hand-overs bring packs that were above their label’s storage limit on the road (up to ${facts['hours']} h); by the model no more than ${facts['log10']} log10 was lost there.`,
    remedy: 'The label comes first: tell the storekeeper, and use these packs first.',
  },
  E6011: {
    what: ({ facts }) =>
      `${facts['stops']} hand-overs bring packs that lost up to ${facts['log10']} log10 on the road by the model, though no storage limit of their label was passed.`,
    remedy: 'The label holds, and yet plan an earlier hour, ice or another vehicle.',
  },
  // 7-outcomes
  E7001: {
    what: () =>
      'No past season is recorded well enough to play the plan in: nothing is counted as in time, reached or fixed.',
    remedy: 'Send a weather file with at least one past season.',
  },
  E7002: {
    what: ({ facts }) =>
      `No on-farm mean of the response of ${facts['crop']} to inoculation was found: no gain in grain or nitrogen is counted for its inoculant.`,
    remedy: 'Take the nitrogen owed to its inoculant as not known, or send trial results.',
  },
  E7003: {
    what: ({ facts }) =>
      `${facts['communities']} communities are expected to sow ${facts['crop']} with fewer than ${facts['floor']} living rhizobia per seed.`,
    remedy: 'Deliver later or to a cooler store, give packs with a higher count, or agree on a higher dose in writing.',
  },
  E7004: {
    what: ({ facts }) =>
      `For ${facts['communities']} communities nobody can say how many rhizobia are alive when ${facts['crop']} is sown: a count, a dose or a sowing day is not known.`,
    remedy: 'State count and dose of the product, or have the lot tested.',
  },
  E7005: {
    what: ({ facts }) =>
      `The plan can be played in ${facts['seasons']} past ${facts['seasons'] === 1 ? 'season' : 'seasons'} alone: its ranges say little of what the weather can do.`,
    remedy: 'Send a longer weather record.',
  },
  E7006: {
    what: ({ facts }) =>
      `products.csv does not say how much phosphorus is in ${facts['product']}: no gain of it is counted in grain or nitrogen.`,
    remedy: 'Give p_percent from the label, as the element P: P2O5 times 0.4364.',
  },
  E7007: {
    what: ({ facts }) =>
      `scenario.json gives no price of ${facts['crop']} grain: the worth of extra grain and its ratio to cost are left unstated.`,
    remedy: 'Give a price for each t in prices.grain.',
  },
  E7008: {
    what: ({ facts }) =>
      `The inventory method gives no coefficients for the roots of ${facts['crop']}: it is left out of the nitrogen in residues.`,
    remedy: 'Nothing needs doing; nitrogen fixed does not depend on it.',
  },
  E7009: {
    what: ({ facts }) =>
      `The yield of ${facts['crop']}, ${facts['yield']} t per ha, is far above the usual ${facts['usual']}: grain and nitrogen follow it.`,
    remedy: 'See that it is in t per ha; give the yield that growers have, not a record.',
  },
  E7010: {
    what: ({ facts }) =>
      `No trial on farms gives the grain that a kilogram of phosphorus adds to ${facts['crop']}: fertiliser is handed over for it, and no gain is counted.`,
    remedy: 'Count such a gain apart, from trials of your own.',
  },
} as const satisfies ProblemWordings;
