import type { Problem, ProblemCode, UnreachableReason } from '../../../engine/index.ts';
import { bounds, inFile } from './in-file.ts';
import { inPlan } from './in-plan.ts';
import { UNREACHABLE_WORDING } from './reasons.ts';

/** What is said of a problem, and what to do about it. */
export interface ProblemWording {
  readonly what: (problem: Problem) => string;
  readonly remedy: string;
}

/** A code without words is a type error. */
export const PROBLEM_WORDING: Readonly<Record<ProblemCode, ProblemWording>> = {
  // 1-intake
  E1001: {
    what: inFile('{count} problems of the kind {code} were met here, of which {listed} are listed'),
    remedy: 'Correct what is listed, then read the files again to see the rest.',
  },
  E1002: {
    what: inFile(
      '{count} problems of the kind {code} were met here, of which {listed} are listed; none of them is used',
    ),
    remedy: 'Correct what is listed, then read the files again to see the rest.',
  },
  E1100: {
    what: inFile('this file is not there'),
    remedy: 'Put the file into the folder, or take it out of files in scenario.json.',
  },
  E1101: { what: inFile('the file is empty'), remedy: 'Send the file again, with its header.' },
  E1102: {
    what: inFile('the file is not in UTF-8'),
    remedy: 'Save it again as UTF-8 text (in a spreadsheet: CSV UTF-8).',
  },
  E1103: {
    what: inFile('the file is not JSON'),
    remedy: 'Write it with a program that makes JSON; look for a missing comma, quote or bracket.',
  },
  E1104: {
    what: inFile('the file is nested more than 64 levels deep'),
    remedy: 'Send plain GeoJSON or the format described for this file.',
  },
  E1105: {
    what: inFile('the file holds {value} bytes, more than 256 MiB'),
    remedy: 'Cut it to the district, or simplify its shapes.',
  },
  E1106: {
    what: inFile('the header {value} is not a list of columns separated by commas'),
    remedy: 'Save the table as CSV with commas.',
  },
  E1107: {
    what: inFile('this is not a GeoJSON feature or collection of features'),
    remedy: 'Export the layer as a GeoJSON FeatureCollection (RFC 7946).',
  },
  E1108: {
    what: inFile(
      '{value}: the row has more or fewer cells than the header, or a quote that does not close. It is not used',
    ),
    remedy: 'Put cells that hold a comma or a quote in double quotes; give every row as many cells as the header.',
  },
  E1109: {
    what: inFile('the path leaves the folder of the scenario'),
    remedy: 'Put the file into the folder and name it by its path from there, with forward slashes.',
  },
  E1110: {
    what: inFile('the file begins with a byte-order mark, which was skipped'),
    remedy: 'Nothing needs doing; save as UTF-8 without the mark to be rid of this note.',
  },
  E1111: {
    what: inFile('NaN or Infinity is not JSON; it was read as null'),
    remedy: 'Write null where a number is missing.',
  },
  E1120: {
    what: inFile('no plan is possible without {value}, which is not given or cannot be read'),
    remedy: 'Name the file under files in scenario.json and send it in a readable form.',
  },
  E1121: {
    what: inFile('no usable row is left, and no plan is possible without {value}'),
    remedy: 'Correct the rows that are said to be set aside.',
  },
  E1122: {
    what: inFile('no usable row is left: the plan is made without {value}'),
    remedy: 'Correct the rows that are said to be set aside, or add rows.',
  },
  E1123: {
    what: inFile('the column is missing, so no row can be used'),
    remedy: 'Add the column to the header; columns marked with * are required.',
  },
  E1124: {
    what: inFile('the column is not known and is not used'),
    remedy: 'Correct its name, or leave it: it does no harm.',
  },
  E1125: { what: inFile('the header names the column twice; the first is used'), remedy: 'Take one of the two out.' },
  E1200: {
    what: inFile('the format is not {expected}'),
    remedy: 'Write "format": "nodulary-scenario/1" into scenario.json.',
  },
  E1201: {
    what: inFile('an entry that every plan needs is missing or cannot be used'),
    remedy: 'Correct the entries of scenario.json named beside this problem.',
  },
  E1202: {
    what: inFile('planning ends on {value}, before it begins on {from}'),
    remedy: 'Correct planning.from and planning.to.',
  },
  E1203: { what: inFile('planning lasts {days} days, more than a year'), remedy: 'Plan one season at a time.' },
  E1204: { what: inFile('the entry is not known and is not used'), remedy: 'Correct its name, or take it out.' },
  E1205: {
    what: inFile(
      'the time zone {value} is not known; clocks are taken {utcOffsetMinutes} minutes ahead of UTC, by longitude',
    ),
    remedy: 'Give a name of the IANA time zone list, such as Africa/Lusaka.',
  },
  E1206: {
    what: inFile('{value} is not a currency code of three capital letters; it is shown as given'),
    remedy: 'Give the ISO 4217 code.',
  },
  E1207: {
    what: inFile('planning begins on {value}, though what happened is known up to {asOf}'),
    remedy: 'Begin planning after asOf, unless days already past are meant.',
  },
  E1208: {
    what: inFile('the season is of {value}, but planning begins on {from}'),
    remedy: 'Correct seasonYear or the planning dates.',
  },
  E1209: {
    what: inFile('{value} is not what stands here: {expected}'),
    remedy: 'Correct the shape of the entry; without it the defaults hold.',
  },
  E1210: {
    what: inFile(
      'clocks in {value} change by {minutes} minutes while planning runs; the offset of the as-of day is kept',
    ),
    remedy: 'After the change all hours of the plan are {minutes} minutes off by the local clock: tell the crews.',
  },
  E1300: { what: inFile('the cell is blank and required'), remedy: 'Fill the cell.' },
  E1301: {
    what: inFile('{value} is not a number'),
    remedy: 'Write a plain number with a decimal point, without units, spaces or thousands separators.',
  },
  E1302: {
    what: (problem) => inFile(`{value} is out of range: ${bounds(problem)} is due`)(problem),
    remedy: 'Correct the number; areas, weights and counts cannot be negative.',
  },
  E1303: {
    what: inFile('{value} is not a date of the form YYYY-MM-DD'),
    remedy: 'Write dates as ISO 8601: 5 November 2026 is 2026-11-05.',
  },
  E1304: {
    what: inFile('{value} is not a time of the form HH:MM'),
    remedy: 'Write times on the 24-hour clock, such as 06:30.',
  },
  E1305: { what: inFile('{value} is not among {known}'), remedy: 'Use one of the known words.' },
  E1306: { what: inFile('{value} comes before {first} {from}'), remedy: 'Correct the two values.' },
  E1307: {
    what: inFile('{value} is the id of entry {keptRow} as well, which is kept'),
    remedy: 'Give every row an id of its own, or take out the row that is wrong.',
  },
  E1308: {
    what: inFile('{value} is not in {part}, or was set aside there'),
    remedy: 'Correct the id, or add the row that it names.',
  },
  E1309: {
    what: inFile('{value} looks like markup or a formula; it is kept as plain text'),
    remedy: 'Correct the text if it was not meant.',
  },
  E1310: {
    what: inFile('control characters were taken out of the text'),
    remedy: 'Nothing needs doing; type the text again to be rid of this note.',
  },
  E1311: { what: inFile('{value} is not a whole number'), remedy: 'Write a whole number.' },
  E1312: { what: inFile('{value} is not among {known}'), remedy: 'Use the known words, separated by ;' },
  E1400: {
    what: inFile('{value} is no geometry of use here'),
    remedy: 'Places are points or polygons, zones polygons, roads lines.',
  },
  E1401: {
    what: inFile('a coordinate is not a number: {value}'),
    remedy: 'Draw the shape again, or export it again without empty coordinates.',
  },
  E1402: {
    what: inFile('{value} has a latitude beyond 90 degrees: longitude and latitude seem swapped'),
    remedy: 'Swap the two: GeoJSON has longitude first, then latitude; in tables mind the columns lat and lon.',
  },
  E1403: {
    what: inFile('{value} lies far from the district, and in it if longitude and latitude are swapped'),
    remedy: 'Swap the two: GeoJSON has longitude first, then latitude; in tables mind the columns lat and lon.',
  },
  E1404: {
    what: inFile('a ring does not end where it begins; it was closed'),
    remedy: 'Nothing needs doing; look at the shape on the map.',
  },
  E1405: { what: inFile('a ring has only {value} positions; four are needed'), remedy: 'Draw the area again.' },
  E1406: {
    what: inFile('a line has only {value} positions or leads nowhere'),
    remedy: 'Draw the line again, or take it out.',
  },
  E1407: { what: inFile('a MultiLineString was split into {lines} lines'), remedy: 'Nothing needs doing.' },
  E1408: {
    what: inFile('{value} is not on the globe in degrees'),
    remedy: 'Export the layer in longitude and latitude, decimal degrees (WGS 84).',
  },
  E1409: {
    what: inFile('depot {depot} at {value} (latitude; longitude) lies more than {km} km from every community'),
    remedy: 'Look at it on the map: it may lie in the sea, or have a wrong digit.',
  },
  E1410: {
    what: inFile('{count} roads are of the class {value}, which is not known; they are not used'),
    remedy: 'Give them one of the classes trunk, primary, secondary, tertiary, unclassified, track, path.',
  },
  E1411: {
    what: inFile('community {value} is named at another hand-over point too; it collects at {kept}'),
    remedy: 'Name it at one point only.',
  },
  E1500: {
    what: inFile('the column has hectares, but what stands before _ha is no crop of this program; it is not used'),
    remedy: 'Correct the name of the crop if a crop was meant.',
  },
  E1501: {
    what: inFile('{value} women of {farmers} farmers'),
    remedy: 'Correct the two numbers; farmers counts women and men.',
  },
  E1502: {
    what: inFile('no column of planned hectares, such as soybean_ha'),
    remedy: 'Add a column for each crop: its name and _ha.',
  },
  E1600: {
    what: inFile('{value} is measured in millilitres; 1 mL is taken as 1 g'),
    remedy: 'Weigh 100 mL of the product and give its dose and count by the gram if they differ.',
  },
  E1601: {
    what: inFile('{value} g for a thousand seeds of {crop} is far below the usual {usualLow} g; it is used as given'),
    remedy: 'Multiply by ten if a hundred seeds were weighed.',
  },
  E1602: {
    what: inFile('the dose is missing'),
    remedy: 'Copy dose_g_per_kg or dose_ml_per_kg from the label of this product.',
  },
  E1603: {
    what: inFile('the label states no count of living rhizobia'),
    remedy: 'Copy count_per_g from the label, or have the lots tested.',
  },
  E1604: { what: inFile('the rate is missing'), remedy: 'Give rate_kg_ha as recommended where it is used.' },
  E1605: {
    what: inFile('doses or counts by the gram and by the millilitre are both given; that by the gram is used'),
    remedy: 'Keep the one that stands on the label.',
  },
  E1700: {
    what: inFile('lot {lot} expired on {value}; it is not given'),
    remedy: 'Return it, or dispose of it as national rules say; do not relabel.',
  },
  E1701: {
    what: inFile('lot {lot} is {value}; it is not given'),
    remedy: 'Clear it on stated evidence by a named person, or replace it.',
  },
  E1702: {
    what: inFile('{count} lots have no status and are taken as cleared'),
    remedy: 'State cleared, on_hold or awaiting for every lot.',
  },
  E1703: { what: inFile('lot {lot} was tested on {value}, after the as-of day'), remedy: 'Correct the date or asOf.' },
  E1800: {
    what: inFile('a payload of {value} kg carries nothing'),
    remedy: 'Give the payload in kilograms, without the crew.',
  },
  E1801: {
    what: inFile(
      'packs of water at {value} °C come straight from a freezer and can freeze inoculant; reckoned as ice at 0 °C',
    ),
    remedy: 'Leave frozen packs at room temperature until water moves in them, or use cool water packs (packs_c 5).',
  },
  E1802: {
    what: inFile('a cold life of {value} h says nothing without the ice it was rated with'),
    remedy: 'Give ice_kg, or the insulation itself in cool_ua_w_per_k.',
  },
  E1900: {
    what: inFile('{count} weather rows after {lastDay} are ignored: they lie beyond the forecast'),
    remedy: 'Nothing needs doing; forecastHorizonDays in scenario.json sets how far a forecast is used.',
  },
  E1901: {
    what: inFile('days of station {station} that miss a value: {count} (Tmin {tmin}, Tmax {tmax}, rain {rain})'),
    remedy: 'Nothing needs doing; fill them if the readings are known.',
  },
  E1902: {
    what: inFile(
      'days of station {station} with Tmin above Tmax, both taken as missing: {count}, first {date} with {value} above {tmaxC}',
    ),
    remedy: 'Correct the two readings.',
  },
  E1903: {
    what: inFile('station {station} has another row for {value}; it is not used'),
    remedy: 'Take out the row that is wrong.',
  },
  E1904: {
    what: inFile('station {station} stands at {places} places; the one that most rows state is used'),
    remedy: 'Give a station that moved another id, or correct the position.',
  },
  E1905: {
    what: inFile(
      'temperatures of station {station} look like °F: {share} percent of its maxima are above {limit}; none is used',
    ),
    remedy: 'Convert the columns to °C: (°F - 32) x 5 / 9.',
  },
  E1950: {
    what: inFile('{value} does not make a decision'),
    remedy: 'Make the decision again in the program, or correct the entry.',
  },
  E1951: {
    what: inFile('the file is not of the format nodulary-decisions/1; no decision is used'),
    remedy: 'Use the file as the program wrote it.',
  },
  E1952: {
    what: inFile('the decision speaks of {value}, which the files do not have'),
    remedy: 'Correct the id, or take the decision back.',
  },
  E1960: {
    what: inFile('a hand-over dated {value} lies after the as-of day'),
    remedy: 'Enter hand-overs once they happened, and move asOf on.',
  },
  E1970: {
    what: inFile('no column of times and temperatures is found among {value}; the file is not used'),
    remedy: 'Let the first line name the columns, such as time and temp_c; take out lines above it.',
  },
  E1971: {
    what: inFile('{samples} readings belong to no lot or trip that is known ({value}); they are not used'),
    remedy: 'Give a column lot_id or trip, or name the file after the lot: readings/LOT.csv.',
  },
  E1972: {
    what: inFile('no unit is stated; taken as °C (median {median})'),
    remedy: 'Write °C or °F into the header of the column.',
  },
  E1973: {
    what: inFile('no unit is stated; a median of {median} can only be °F, and so it was read'),
    remedy: 'Write °C or °F into the header of the column.',
  },
  E1974: {
    what: inFile('no unit is stated, and a median of {median} may be °C or °F; the file is not used'),
    remedy: 'Write °C or °F into the header of the column. Until then treat the packs as exposed to heat: hold them.',
  },
  E1975: {
    what: inFile('nothing tells whether {value} names the day or the month first; the day was taken first'),
    remedy: 'Write dates as 2026-11-20.',
  },
  E1976: { what: inFile('{value} cannot be read; the row is a gap'), remedy: 'Correct the cell, or leave it blank.' },
  E1977: {
    what: inFile('{count} readings after the as-of day are ignored'),
    remedy: 'Move asOf on, or correct the clock of the logger.',
  },
  E1978: {
    what: inFile(
      'times repeat ({repeated}) or run backwards ({backwards}), as when clocks are set back; put in order, the hotter of two kept',
    ),
    remedy: 'Let the logger run on standard time.',
  },
  E1979: {
    what: inFile('{gaps} gaps of {hours} hours in all; over each the hotter of its two ends was taken to hold'),
    remedy: 'Send the missing part of the record if there is one.',
  },
  E1980: {
    what: inFile(
      '{where} {value}: {hours} h, {minC} to {maxC} °C, mean kinetic temperature {meanKineticC} °C, {above30} h above 30 and {above40} h above 40 °C, log10 lost {log10}',
    ),
    remedy: 'Nothing needs doing. The label comes first: what it says of storage holds whatever the loss.',
  },
  E1981: {
    what: inFile('{where} {value} was at {maxC} °C: its packs are on hold until a named person clears them'),
    remedy:
      'Set the packs apart, keep them cool, have them counted; clear them by name on stated evidence, or replace them.',
  },
  E1982: {
    what: inFile('the count of lot {lot} falls from {before} to {after} per g by what its record cost ({log10} log10)'),
    remedy: 'Nothing needs doing; a new test replaces the reckoning.',
  },
  E1983: {
    what: inFile('{where} {value} was at {minC} °C and may have frozen'),
    remedy: 'Never put inoculant into a freezer or beside packs straight from one; have the packs counted before use.',
  },
  E1984: {
    what: inFile('{where} {value} was above 35 °C for {above35} hours, more than seven days'),
    remedy: 'Keep the packs at 25 °C for a while or have them counted before use.',
  },
  E1985: {
    what: inFile('lot {lot} was hotter than survival is known for (60 °C): on hold'),
    remedy: 'Have the packs counted before use, or replace them.',
  },
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
  E5024: {
    what: (p) =>
      `${p.facts['rows']} past hand-overs are taken off the lots, as they were counted when they came, and off what their communities still need.`,
    remedy: 'Nothing needs doing, unless the lots file already counts what is left: then take these rows out of it.',
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
    what: () =>
      'The need for fertiliser is counted, but this plan hands none over: no gain from phosphorus is counted in grain or nitrogen.',
    remedy: 'Count such a gain apart, from trials of the product.',
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
  // checker
  E8001: {
    what: inPlan('is not of the format {expected}'),
    remedy: 'Make the plan again with this version of the program.',
  },
  E8002: { what: inPlan('is missing'), remedy: 'Make the plan again; do not edit plan.json by hand.' },
  E8003: {
    what: inPlan('has {value} rows where {expected} are due'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8004: {
    what: inPlan('holds {value} where {expected} is due'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8005: {
    what: inPlan('points to {value}, outside its list of {expected}'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8011: {
    what: inPlan('was made from files with the hash {value}; these files have {expected}'),
    remedy: 'Plan these files again, or check against the files that were planned.',
  },
  E8012: {
    what: inPlan('was made under decisions with the hash {value}; these have {expected}'),
    remedy: 'Plan again with these decisions.',
  },
  E8013: { what: inPlan('does not list the ids of the scenario in their order'), remedy: 'Plan these files again.' },
  E8014: { what: inPlan('says {value}; the scenario says {expected}'), remedy: 'Plan these files again.' },
  E8101: {
    what: inPlan('says {value} ha; the polygon measures {expected} ha'),
    remedy: 'Plan again; report the polygon if the difference stays.',
  },
  E8102: {
    what: inPlan('sums to {value} for this community, not to 1'),
    remedy: "Plan again; report the community's polygon if the difference stays.",
  },
  E8103: {
    what: inPlan('says {value}; sampling the polygons gives {expected}'),
    remedy: 'Plan again; report the two polygons if the difference stays.',
  },
  E8104: {
    what: inPlan('lies {value}; it should lie {expected}'),
    remedy: 'Plan again with the hand-over points as given.',
  },
  E8105: {
    what: inPlan('sends the community to place {value}; the files say {expected}'),
    remedy: 'Plan again with the hand-over points as given.',
  },
  E8106: {
    what: inPlan('says that the place is out of reach; a way of {expected} km there and back exists'),
    remedy: 'Plan again; report the place if it stays.',
  },
  E8201: {
    what: inPlan('says {value}; the scenario gives {expected}'),
    remedy: 'Plan again; the season follows from scenario.json and weather.csv.',
  },
  E8202: {
    what: inPlan('counts {value}; the weather record gives {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8203: {
    what: inPlan('says {value}; the rain record gives {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8204: {
    what: inPlan('says {value}; the seasons give {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8205: {
    what: inPlan('says {value}; the onset and the offsets give {expected}'),
    remedy: 'Plan again with the same weather and crop windows.',
  },
  E8206: { what: inPlan('says {value}; the rain gives {expected}'), remedy: 'Plan again with the same weather file.' },
  E8207: {
    what: inPlan('says {value}; the calendar says {expected}'),
    remedy: 'Plan again with the workdays and holidays of scenario.json.',
  },
  E8208: {
    what: inPlan('says {value} °C; the weather file gives {expected} °C'),
    remedy: 'Plan again with the same weather file.',
  },
  E8301: {
    what: inPlan("says {value} ha; the community's file and its zone share give {expected} ha"),
    remedy: 'Plan again; planned land is used as given.',
  },
  E8302: { what: inPlan('has {value} rows for one zone, community and crop, not {expected}'), remedy: 'Plan again.' },
  E8303: { what: inPlan('says {value} kg; hectares and seed rate give {expected} kg'), remedy: 'Plan again.' },
  E8304: {
    what: inPlan("says {value} kg; the community's file gives {expected} kg"),
    remedy: 'Plan again; farmer-saved seed counts as given.',
  },
  E8305: { what: inPlan("says {value} g; seed and the pack's own dose give {expected} g"), remedy: 'Plan again.' },
  E8306: { what: inPlan('says {value} packs; the need and the pack give {expected}'), remedy: 'Plan again.' },
  E8307: { what: inPlan('says {value}; seed, land and the label give {expected}'), remedy: 'Plan again.' },
  E8401: {
    what: inPlan('gives {value} packs; the lot has {expected} to give'),
    remedy: 'Plan again; nobody can hand over packs that are not there.',
  },
  E8402: {
    what: inPlan('gives packs of a lot that is held back: {value}'),
    remedy: 'Do not hand these packs over. Plan again.',
  },
  E8403: {
    what: inPlan('gives {value} for {expected}'),
    remedy: 'Do not hand these packs over: match the legume on the label. Plan again.',
  },
  E8404: {
    what: inPlan('keeps {value} packs back; the policy asks for {expected}'),
    remedy: 'Plan again, or lower reservePercent in scenario.json.',
  },
  E8405: {
    what: inPlan("says {value}; the lot's own data say {expected}"),
    remedy: 'Plan again with the same lots file.',
  },
  E8406: { what: inPlan('says {value} kg; the packs weigh {expected} kg'), remedy: 'Plan again.' },
  E8407: {
    what: inPlan('says {value} kg of seed; the packs serve {expected} kg'),
    remedy: 'Plan again; the dose on the label holds.',
  },
  E8408: { what: inPlan('says {value}; the packs given make {expected}'), remedy: 'Plan again.' },
  E8409: {
    what: inPlan('gives {value} kg; the need rounded up to a pack is {expected} kg'),
    remedy: 'Plan again; the surplus belongs to others.',
  },
  E8410: { what: inPlan('says {value}; the decision asks for {expected}'), remedy: 'Plan again with these decisions.' },
  E8411: {
    what: inPlan('leaves the community {value} kg short while lot {expected} could serve it'),
    remedy: 'Plan again; stock that could serve someone has to be given.',
  },
  E8412: {
    what: inPlan('says {value} kg; the shares leave {expected} kg short'),
    remedy: 'Plan again; every shortfall is shown with its reason.',
  },
  E8413: { what: inPlan('says {value}; {expected}'), remedy: 'Plan again.' },
  E8414: { what: inPlan('an order of {value} is dated wrongly or comes too late: {expected}'), remedy: 'Plan again.' },
  E8415: { what: inPlan('orders {value}; price, multiple and budget give {expected}'), remedy: 'Plan again.' },
  E8416: { what: inPlan('puts {value} L into a cool store that has room for {expected} L'), remedy: 'Plan again.' },
  E8417: { what: inPlan('orders {value}; short is {expected}'), remedy: 'Plan again.' },
  E8421: { what: inPlan('sends {value} packs of a grant of {expected}'), remedy: 'Plan again.' },
  E8422: { what: inPlan('says {value}; its packs give {expected}'), remedy: 'Plan again.' },
  E8423: { what: inPlan('loads {value} packs of {expected}'), remedy: 'Plan again.' },
  E8424: {
    what: inPlan('is handled {value} times, not {expected}'),
    remedy: 'Plan again; what is allocated is delivered or shown as unserved.',
  },
  E8425: {
    what: inPlan('hands the load over at place {value}; it belongs to place {expected}'),
    remedy: 'Plan again.',
  },
  E8426: { what: inPlan('says {value}; its packs give {expected}'), remedy: 'Plan again.' },
  E8501: { what: inPlan('says {value}; stock and need give {expected}'), remedy: 'Plan again.' },
  E8502: { what: inPlan('fails at {value}: {expected} is due'), remedy: 'Plan again.' },
  E8503: { what: inPlan('says {value}; the prices give {expected}'), remedy: 'Plan again.' },
  E8504: {
    what: inPlan('gets {value} of its need; the fair share leaves nobody below {expected}'),
    remedy: 'Plan again, or record a decision that says why.',
  },
  E8601: { what: inPlan('sends vehicle {value}; the goods lie at depot {expected}'), remedy: 'Plan again.' },
  E8602: {
    what: inPlan('drives on {value}; the vehicle is away'),
    remedy: "Plan again, or change the vehicle's dates.",
  },
  E8603: {
    what: inPlan('drives on {value}, which is no workday'),
    remedy: 'Plan again, or change workdays and holidays.',
  },
  E8604: {
    what: inPlan('carries {value} kg; the vehicle carries {expected} kg'),
    remedy: 'Do not load it so. Plan again.',
  },
  E8605: { what: inPlan('takes {value} L; the box holds {expected} L'), remedy: 'Do not load it so. Plan again.' },
  E8606: { what: inPlan('draws {value} kg of ice; there are {expected} kg'), remedy: 'Plan again.' },
  E8607: { what: inPlan('says {value}; its stops give {expected}'), remedy: 'Plan again.' },
  E8608: { what: inPlan('starts at minute {value}; the vehicle is ready at {expected}'), remedy: 'Plan again.' },
  E8609: { what: inPlan('says {value}; the decision asks for {expected}'), remedy: 'Plan again with these decisions.' },
  E8701: {
    what: inPlan('leaves at minute {value}; it may leave at {expected}'),
    remedy: 'Plan again; shift, depot hours, loading, daylight and road hours bind.',
  },
  E8702: {
    what: inPlan('returns at minute {value}; it must be back by {expected}'),
    remedy: 'Plan again; shift, depot hours, daylight and road hours bind.',
  },
  E8703: { what: inPlan('starts or ends at minute {value}; the place is open {expected}'), remedy: 'Plan again.' },
  E8704: { what: inPlan('stops on {value}, when the community or its zone is closed'), remedy: 'Plan again.' },
  E8705: {
    what: inPlan('stops on weekday {value}; market day is {expected}'),
    remedy: 'Plan again, or set marketDays to prefer.',
  },
  E8706: { what: inPlan('hands inoculant over on {value}; the seed comes on {expected}'), remedy: 'Plan again.' },
  E8707: { what: inPlan('hands over on {value}; the goods serve {expected}'), remedy: 'Plan again.' },
  E8709: {
    what: inPlan('says it may leave as late as minute {value}; {expected} would break then'),
    remedy: 'Plan again.',
  },
  E8708: { what: inPlan('says minute {value}; the times before it give {expected}'), remedy: 'Plan again.' },
  E8801: { what: inPlan('breaks or ends {value} km away from where it should be'), remedy: 'Plan again.' },
  E8802: { what: inPlan('drives road {value} against its direction'), remedy: 'Plan again.' },
  E8803: { what: inPlan('drives road {value}, closed that day'), remedy: 'Plan again.' },
  E8804: { what: inPlan('drives a road of class {value}; the vehicle may use {expected}'), remedy: 'Plan again.' },
  E8805: { what: inPlan('says {value} km; the path measures {expected} km'), remedy: 'Plan again.' },
  E8806: { what: inPlan('says {value} minutes; the roads allow it in {expected}'), remedy: 'Plan again.' },
  E8807: { what: inPlan('lies {value} km from its path; at most {expected} km is allowed'), remedy: 'Plan again.' },
  E8808: { what: inPlan('uses a leg {value}; the trip needs {expected}'), remedy: 'Plan again.' },
  E8901: {
    what: inPlan('reaches {value} °C in the hot band; below {expected} °C is required'),
    remedy: 'Do not send the packs this way. Plan again, with ice, a better box or an earlier hour.',
  },
  E8902: {
    what: inPlan('says {value} °C; the box model gives {expected} °C'),
    remedy: 'Plan again; expect the higher figure.',
  },
  E8903: {
    what: inPlan('says {value} log10; the temperatures give {expected}'),
    remedy: 'Plan again; expect the larger loss.',
  },
  E8904: {
    what: inPlan('says {value} h; the temperatures give {expected} h'),
    remedy: 'Plan again, with ice, a better box or an earlier hour.',
  },
  E8905: { what: inPlan('is empty where inoculant rides'), remedy: 'Plan again.' },
  E8911: {
    what: inPlan('is left behind ({value}); an idle vehicle could take it: {expected}'),
    remedy: 'Plan again; try more iterations.',
  },
  E8912: { what: inPlan('says {value}; {expected}'), remedy: 'Plan again.' },
  E8951: { what: inPlan('says {value} ha; what is handed over gives at most {expected} ha'), remedy: 'Plan again.' },
  E8952: {
    what: inPlan('says {value} kg; hectares, yield and the published coefficients give {expected} kg'),
    remedy: 'Plan again.',
  },
  E8953: { what: inPlan('runs {value}; the three figures must rise'), remedy: 'Plan again.' },
  E8954: { what: inPlan('says {value}; the rows sum to {expected}'), remedy: 'Plan again.' },
  E8955: { what: inPlan('says {value}; prices and amounts give {expected}'), remedy: 'Plan again.' },
  E8956: { what: inPlan('says {value} log10 per seed; dose and losses give {expected}'), remedy: 'Plan again.' },
};
