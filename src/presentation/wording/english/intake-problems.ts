import { bounds, inFile } from './in-file.ts';
import type { ProblemWordings } from './problem-wording.ts';

/** Problems in the files. */
export const INTAKE_PROBLEMS = {
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
    what: inFile('days of planning from {value} to {asOf} are over'),
    remedy: 'Enter all hand-overs up to then.',
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
  E1606: {
    what: inFile('holds more phosphorus, {value} percent, than any fertiliser: it is likely told as P2O5'),
    remedy: 'Give p_percent as the element P: P2O5 times 0.4364.',
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
    what: inFile('{value} lies after the as-of day'),
    remedy: 'Close the day, or correct the date.',
  },
  E1961: {
    what: inFile('the same hand-over is recorded twice; it is counted once'),
    remedy: 'If there were two, name the vehicle of each.',
  },
  E1962: {
    what: inFile('two records of {lot} for {community} on {date} differ; both are counted'),
    remedy: 'Ask who signed.',
  },
  E1963: {
    what: inFile('{packs} packs of {lot} were handed over, though it came with {held}'),
    remedy: 'Count the store.',
  },
  E1965: {
    what: inFile('{value} packs of {lot} for {community} on {date}, though {carried} were carried'),
    remedy: 'Ask who signed.',
  },
  E1964: {
    what: inFile('a box was at {value} °C: {returned} packs of {lot} came back, {kept} did not; all are on hold'),
    remedy: 'A named person clears them on stated evidence.',
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
} as const satisfies ProblemWordings;
