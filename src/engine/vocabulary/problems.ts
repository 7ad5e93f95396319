import type { ScenarioPart } from './records.ts';

/**
 * A problem is a code with values, never a sentence: the words for it stand in presentation/wording. Codes run E1xxx
 * intake, E2xxx places, E3xxx season, E4xxx needs, E5xxx allocation, E6xxx delivery, E7xxx outcomes, E8xxx checker.
 */

/** `noted`: used, or repaired, and said. `set aside`: this row is not used, the rest is planned. `blocks`: no honest plan is possible. */
export type Weight = 'noted' | 'set aside' | 'blocks';

/** Every code, with its weight. The remedy stands beside the wording of the code, one for each. */
export const PROBLEM_WEIGHTS = {
  // 1-intake: what was met in the files
  E1001: 'noted', // further problems of one noted kind, counted instead of listed
  E1002: 'set aside', // further problems of one set-aside kind, counted instead of listed
  E1100: 'set aside', // a file that is not there
  E1101: 'set aside', // an empty file
  E1102: 'set aside', // a file that is not UTF-8
  E1103: 'set aside', // a file that is not JSON
  E1104: 'set aside', // JSON nested too deep
  E1105: 'set aside', // a file that is too large
  E1106: 'set aside', // a file that is not a table with commas
  E1107: 'set aside', // a file or feature that is not GeoJSON
  E1108: 'set aside', // a row with other cells than the header has, or with a quote that does not close
  E1109: 'set aside', // a path that leaves the scenario's folder
  E1110: 'noted', // a byte-order mark
  E1111: 'noted', // bare NaN or Infinity in JSON, read as null
  E1120: 'blocks', // a file that every plan needs was not given or cannot be read
  E1121: 'blocks', // a file that every plan needs holds no usable row
  E1122: 'noted', // a file without a usable row: what it would allow cannot be planned
  E1123: 'set aside', // a column that every row needs is missing
  E1124: 'noted', // a column that is not known
  E1125: 'noted', // a column that is named twice
  E1200: 'blocks', // scenario.json is not of the format nodulary-scenario/1
  E1201: 'blocks', // an entry of scenario.json that every plan needs is missing or not usable
  E1202: 'blocks', // planning ends before it begins, or is over
  E1203: 'blocks', // planning longer than a year
  E1204: 'noted', // an entry of scenario.json that is not known
  E1205: 'noted', // a time zone that is not known
  E1206: 'noted', // a currency that is not three capital letters
  E1207: 'noted', // days of planning that are over, not planned any more
  E1208: 'noted', // planning in another year than the season's
  E1209: 'set aside', // an entry of scenario.json of the wrong shape
  E1210: 'noted', // clocks change while planning runs
  // 1-intake: cells
  E1300: 'set aside', // a required cell is blank
  E1301: 'set aside', // not a number
  E1302: 'set aside', // a number out of range, such as a negative area
  E1303: 'set aside', // not an ISO 8601 date
  E1304: 'set aside', // not a clock time HH:MM
  E1305: 'set aside', // a word that is not among those known
  E1306: 'set aside', // dates or hours out of order
  E1307: 'set aside', // an id that another row has
  E1308: 'set aside', // an id that no row of the other file has
  E1309: 'noted', // markup or a formula in a text, kept as plain text
  E1310: 'noted', // control characters, taken out of a text
  E1311: 'set aside', // not a whole number
  E1312: 'set aside', // an item of a list that is not among those known
  // 1-intake: places
  E1400: 'set aside', // no geometry, or of a type that has no use here
  E1401: 'set aside', // a coordinate that is not a number
  E1402: 'set aside', // a latitude beyond 90 degrees that would be a longitude
  E1403: 'set aside', // far from all others, and among them with latitude and longitude swapped
  E1404: 'noted', // a ring that is not closed, closed
  E1405: 'set aside', // a ring of fewer than four positions
  E1406: 'set aside', // a line of fewer than two positions
  E1407: 'noted', // a MultiLineString, split into its lines
  E1408: 'set aside', // a coordinate outside longitude 180 and latitude 90 degrees
  E1409: 'noted', // a depot far from every community
  E1410: 'set aside', // road lines of a class that is not known
  E1411: 'noted', // a community that is named at two hand-over points
  // 1-intake: rows
  E1500: 'noted', // a column of hectares whose crop is not known
  E1501: 'noted', // more women than farmers
  E1502: 'blocks', // no column of planned hectares
  E1600: 'noted', // a millilitre taken as a gram
  E1601: 'noted', // a thousand-seed weight that looks like the weight of a hundred seeds
  E1602: 'set aside', // an inoculant or sticker without a dose
  E1603: 'noted', // an inoculant whose label states no count
  E1604: 'set aside', // a fertiliser without a rate
  E1605: 'noted', // both doses given; grams taken
  E1606: 'noted', // more phosphorus than any fertiliser holds: likely told as P2O5
  E1700: 'noted', // a lot past its expiry date
  E1701: 'noted', // a lot on hold or awaiting
  E1702: 'noted', // lots without a status, taken as cleared
  E1703: 'noted', // a test dated after the as-of day
  E1800: 'set aside', // a vehicle that can carry nothing
  E1801: 'noted', // packs of water straight from a freezer, reckoned as ice at 0 °C
  E1802: 'set aside', // a cold life without the ice that it was rated with
  E1900: 'noted', // weather rows after the forecast horizon, ignored
  E1901: 'noted', // weather rows with an empty value
  E1902: 'noted', // days with Tmin above Tmax, both taken as missing
  E1903: 'set aside', // a second row for one station and day
  E1904: 'noted', // a station at more than one position
  E1905: 'set aside', // temperatures of a station that look like °F
  E1950: 'set aside', // an entry of decisions.json that is not a decision
  E1951: 'set aside', // decisions.json is not of the format nodulary-decisions/1
  E1952: 'set aside', // a decision on something that the files do not have
  E1960: 'set aside', // a hand-over, a sowing or a measurement dated after the as-of day
  E1961: 'set aside', // the same hand-over recorded twice
  E1962: 'noted', // two records of one day, community and lot that differ, both counted
  E1963: 'noted', // more packs of a lot handed over than it held
  E1964: 'noted', // packs from a box at 40 °C or above, on hold
  E1965: 'noted', // more packs recorded than the plan had on that vehicle for that community
  // 1-intake: logger readings
  E1970: 'set aside', // a logger file without a column of times or temperatures
  E1971: 'set aside', // readings that no lot or trip can be told for
  E1972: 'noted', // no unit stated, taken as °C
  E1973: 'noted', // no unit stated, can only be °F
  E1974: 'set aside', // no unit stated, may be either
  E1975: 'noted', // day and month cannot be told apart, day taken first
  E1976: 'set aside', // a row whose time or temperature cannot be read
  E1977: 'noted', // readings after the as-of day, ignored
  E1978: 'noted', // times that repeat or run backwards, put in order, the hotter kept
  E1979: 'noted', // long gaps, the hotter end taken to hold
  E1980: 'noted', // what a logger's record shows
  E1981: 'noted', // at or above 40 °C: on hold until a named person clears it
  E1982: 'noted', // a lot's count lowered by what its record cost
  E1983: 'noted', // below freezing
  E1984: 'noted', // seven days above 35 °C
  E1985: 'noted', // hotter than survival is known for: on hold, to be tested
  // 2-places
  E2001: 'noted', // invalid polygon repaired
  E2002: 'noted', // polygon that covers no ground, taken as a point
  E2003: 'noted', // community partly or wholly outside all zones
  E2004: 'noted', // zone_id against geometry
  E2005: 'noted', // more legume than land
  E2006: 'set aside', // road closure that cannot be placed
  E2007: 'noted', // zones overlap
  E2008: 'noted', // road network in pieces
  E2009: 'set aside', // depot on no road
  E2010: 'noted', // community that no vehicle reaches
  E2011: 'noted', // no roads
  // 3-season
  E3001: 'noted', // no weather station at all: an assumed day's air, no expected onset
  E3002: 'noted', // a zone's nearest station is far away
  E3003: 'noted', // no past season is complete enough: no expected onset
  E3004: 'noted', // few past seasons
  E3005: 'noted', // no season named, onsets looked for in the planning period
  E3006: 'noted', // every past season would have begun by now; all count
  E3007: 'noted', // days whose air is assumed
  E3008: 'noted', // no season gives a sowing day for a crop
  E3009: 'noted', // a station without a complete past season, not used
  E3010: 'noted', // planning days whose rain nothing tells, roads taken as passable
  // 4-needs
  E4001: 'noted', // crop planned, no inoculant names it
  E4002: 'noted', // more farmer-saved seed than the planned land takes
  E4003: 'noted', // label count and dose put fewer rhizobia on a seed than the floor
  // 5-allocation
  E5001: 'noted', // a lot past its expiry date
  E5002: 'noted', // a lot likely to expire before sowing
  E5003: 'noted', // a lot on hold
  E5004: 'noted', // a lot awaiting its test
  E5005: 'noted', // an inoculant lot below the minimum count
  E5006: 'noted', // a seed lot below the minimum germination
  E5007: 'noted', // treated seed whose label does not allow inoculant
  E5008: 'noted', // a lot that arrives after the last planning day
  E5009: 'noted', // a lot for crops that nobody plans
  E5010: 'noted', // a lot at a depot that is not known
  E5011: 'noted', // an inoculant lot without any count
  E5012: 'noted', // a lot that arrives while planning runs, used from that day
  E5013: 'noted', // stock whose label states no dose, not given
  E5014: 'noted', // packs without a volume, taken as 2 L per kg
  E5015: 'noted', // opening stock that the cool store has no room for
  E5020: 'noted', // a decision on a community, crop or lot that is not planned
  E5021: 'noted', // a fix or floor that the stock cannot meet
  E5022: 'blocks', // no answer from the solver
  E5023: 'noted', // growers not told: equal over communities instead
  E5024: 'noted', // past hand-overs, taken off stock and need
  E5025: 'noted', // packs of a lot on hold, by a decision or a hot box
  E5026: 'noted', // fertiliser for a part of the land alone
  // 6-delivery
  E6001: 'noted', // decision on a vehicle or hand-over that names nothing in the scenario
  E6002: 'noted', // promised date not kept
  E6003: 'noted', // depot that is to send goods has no vehicle
  E6004: 'noted', // loads of the first round that could not be held
  E6010: 'noted', // the label counts a breach where the model sees little lost
  E6011: 'noted', // the model sees much lost where the label says nothing
  // 7-outcomes
  E7001: 'noted', // no season to play the plan in
  E7002: 'noted', // no published response to inoculation: no gain is counted
  E7003: 'noted', // fewer rhizobia per seed at sowing than the floor
  E7004: 'noted', // rhizobia per seed at sowing not known
  E7005: 'noted', // few past seasons to play the plan in
  E7006: 'noted', // fertiliser whose phosphorus is not stated: no gain from it
  E7007: 'noted', // no price of a crop's grain: worth left unstated
  E7008: 'noted', // no residue coefficients: left out of residue nitrogen
  E7009: 'noted', // a yield far above the usual
  E7010: 'noted', // fertiliser for a crop without a published response to phosphorus: no gain from it
  // checker
  E8001: 'blocks', // the plan is not of the format nodulary-plan/1
  E8002: 'blocks', // a part or column of the plan is missing
  E8003: 'blocks', // columns of one table differ in length
  E8004: 'blocks', // a value of the wrong kind
  E8005: 'blocks', // an index that points nowhere
  E8011: 'blocks', // made from other scenario files
  E8012: 'blocks', // made under other decisions
  E8013: 'blocks', // ids that are not the scenario's
  E8014: 'blocks', // names or dates of another scenario
  E8101: 'blocks', // an area that the polygon does not have
  E8102: 'blocks', // zone shares that do not sum to one
  E8103: 'blocks', // zone shares that the polygons do not bear out
  E8104: 'blocks', // a hand-over place that is not where it should be
  E8105: 'blocks', // a community that collects at another place
  E8106: 'blocks', // a place said to be out of reach that a vehicle reaches
  E8201: 'blocks', // another season, onset rule or station
  E8202: 'blocks', // other past seasons than the record holds
  E8203: 'blocks', // an onset that the rain does not bear out
  E8204: 'blocks', // an onset quantile that the seasons do not give
  E8205: 'blocks', // a sowing window that does not follow from the onset
  E8206: 'blocks', // a road state that the rain does not give
  E8207: 'blocks', // a workday where none is, or the reverse
  E8208: 'blocks', // expected temperatures that the weather does not give
  E8301: 'blocks', // planned hectares changed
  E8302: 'blocks', // a need left out or counted twice
  E8303: 'blocks', // a seed need that the land does not give
  E8304: 'blocks', // the growers' own seed changed
  E8305: 'blocks', // an inoculant need that seed and dose do not give
  E8306: 'blocks', // packs needed that do not follow from the need
  E8307: 'blocks', // sticker, water or fertiliser that do not follow from the need
  E8401: 'blocks', // more packs given than the lot has
  E8402: 'blocks', // packs of a lot that may not be given
  E8403: 'blocks', // packs for a crop their label does not name
  E8404: 'blocks', // the reserve is eaten
  E8405: 'blocks', // a lot verdict that is not true
  E8406: 'blocks', // kilograms that the packs do not weigh
  E8407: 'blocks', // packs said to serve more seed than they hold or coat
  E8408: 'blocks', // a share met that the packs do not give
  E8409: 'blocks', // more given than asked for
  E8410: 'blocks', // a decision on the allocation not followed
  E8411: 'blocks', // stock left lying while a community is short
  E8412: 'blocks', // a shortfall not shown, or shown wrongly
  E8413: 'blocks', // a reason for a shortfall that is not true
  E8414: 'blocks', // an order dated wrongly, or one that comes too late
  E8415: 'blocks', // an order whose money or multiple does not hold
  E8416: 'blocks', // orders for which the cool store has no room
  E8417: 'blocks', // more ordered than is short, or nothing though it is
  E8418: 'blocks', // fertiliser that goes where no seed or inoculant goes from that depot
  E8421: 'blocks', // packs given that are not sent, or sent twice
  E8422: 'blocks', // a consignment that its packs do not make up
  E8423: 'blocks', // packs sent that are not loaded, or loaded twice
  E8424: 'blocks', // a load neither served nor shown as unserved, or both
  E8425: 'blocks', // a load handed over at another place
  E8426: 'blocks', // a load that its packs do not make up
  E8501: 'blocks', // a proof of the fair share missing or about other data
  E8502: 'blocks', // a proof of the fair share that proves nothing
  E8503: 'blocks', // a bound that the prices do not give
  E8504: 'blocks', // a community with less than the fair share
  E8601: 'blocks', // a vehicle of another depot
  E8602: 'blocks', // a vehicle on a day it is not there
  E8603: 'blocks', // a trip on a day that is not worked
  E8604: 'blocks', // more load than the vehicle carries
  E8605: 'blocks', // more litres than the cold box holds
  E8606: 'blocks', // more ice than the depot makes or the box takes
  E8607: 'blocks', // totals of a trip that its stops do not make up
  E8608: 'blocks', // trips of a vehicle that overlap or stand out of order
  E8609: 'blocks', // a decision on the delivery not followed
  E8701: 'blocks', // a trip that leaves too early
  E8702: 'blocks', // a trip that returns too late
  E8703: 'blocks', // a stop outside the place's hours
  E8704: 'blocks', // a stop where the community or zone is closed
  E8705: 'blocks', // a stop that is not on market day
  E8706: 'blocks', // inoculant handed over before its seed
  E8707: 'blocks', // a hand-over outside the consignment's days
  E8708: 'blocks', // times that do not add up
  E8709: 'blocks', // a latest hour to leave at which a rule breaks
  E8710: 'blocks', // fertiliser later than the inoculant that is sown with it
  E8711: 'blocks', // a crew that drives longer than allowed without a rest
  E8801: 'blocks', // a path with a gap, or to another place
  E8802: 'blocks', // a path against a one-way road
  E8803: 'blocks', // a path along a closed road
  E8804: 'blocks', // a path along a road the vehicle may not use
  E8805: 'blocks', // kilometres that the path does not have
  E8806: 'blocks', // minutes that the road does not allow
  E8807: 'blocks', // a site too far from its road
  E8808: 'blocks', // a leg used that is not this trip's
  E8901: 'blocks', // packs that may reach 40 °C before hand-over
  E8902: 'blocks', // packs hotter than the plan says
  E8903: 'blocks', // a loss on the road larger than the plan says
  E8904: 'blocks', // hours above the storage limit beyond what is allowed or told
  E8905: 'blocks', // temperatures of inoculant not told
  E8911: 'blocks', // a load left behind that an idle vehicle could take
  E8912: 'blocks', // a reason for an unserved load that is not true
  E8951: 'blocks', // hectares that the deliveries do not give
  E8952: 'blocks', // nitrogen that hectares and yield do not give
  E8953: 'blocks', // a range out of order
  E8954: 'blocks', // totals that their rows do not sum to
  E8955: 'blocks', // money that prices and amounts do not give
  E8956: 'blocks', // live rhizobia that dose and losses do not give
} as const satisfies Readonly<Record<string, Weight>>;

export type ProblemCode = keyof typeof PROBLEM_WEIGHTS;

/** The entry of a file that a problem speaks of, where a stage knows it by id and not by row. */
export interface ProblemSubject {
  readonly part: ScenarioPart;
  readonly id: string;
}

export interface Problem {
  readonly code: ProblemCode;
  readonly weight: Weight;
  /** File as named in the scenario; null where no one file is meant. */
  readonly file: string | null;
  /** 1-based row (line of a table, position of a feature). */
  readonly row: number | null;
  readonly column: string | null;
  /** The value met, as text. */
  readonly value: string | null;
  readonly about?: ProblemSubject;
  /** Further values that the wording of the code uses, such as an id or a limit. */
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Where a problem stands; what is left out is not known or not meant. */
export interface ProblemPlace {
  readonly file?: string | null;
  readonly row?: number | null;
  readonly column?: string | null;
  readonly value?: string | null;
  readonly about?: ProblemSubject;
  readonly facts?: Readonly<Record<string, string | number>>;
}

export function problem(code: ProblemCode, place: ProblemPlace = {}): Problem {
  return {
    code,
    weight: PROBLEM_WEIGHTS[code],
    file: place.file ?? null,
    row: place.row ?? null,
    column: place.column ?? null,
    value: place.value ?? null,
    ...(place.about ? { about: place.about } : {}),
    facts: place.facts ?? {},
  };
}
