/** Words of the papers that ride along: said to a driver or rider, and to those who load and receive. */
export const ROAD_PAPERS = {
  labelWins: 'The pack label and national rules override this sheet.',
  ofPlan: (scenario: string, asOf: string, plan: string) => `${scenario}, as of ${asOf}, plan ${plan}`,
  day: (weekday: string, date: string) => `${weekday} ${date}`,

  routeTitle: (vehicle: string, day: string) => `Route sheet ${vehicle}, ${day}`,
  load: {
    seed: 'Seed load',
    inoculant: 'Inoculant load',
    both: 'Seed and inoculant load',
    fertiliser: 'Fertiliser load',
  },
  loadWithFertiliser: (load: string) => `${load}, with fertiliser`,
  loadCarries: (what: string) => `${what}.`,
  routeAbout: (kind: string, carriage: string, depot: string, zones: string) =>
    `${kind}, ${carriage}, from ${depot} to ${zones} and back.`,
  carries: (stops: string, km: string, goods: string) => `${stops} stops, ${km} km, ${goods}.`,
  carriesBags: (bags: string) => `${bags} bags of seed`,
  carriesPacks: (packs: string) => `${packs} packs of inoculant`,
  carriesFertiliser: (bags: string) => `${bags} bags of fertiliser`,
  trips: (count: string) => `${count} trips: back to the depot in between.`,
  reprint: (from: string) =>
    `Reprint within 48 h of leaving (from ${from}): hours, ice and roads follow the weather, and the plan may have changed.`,
  registration: 'Vehicle registration',
  driver: 'Driver',
  phone: 'Phone',
  officer: 'Zone officer to ring',
  leaveAt: (clock: string) => `leave at ${clock}, and by`,
  backAbout: (clock: string) => `back about ${clock}`,

  map: (stops: string) => `Map of the route with ${stops} stops`,
  mapNote:
    'Thick line: the route, arrows show the way. Thin: other roads; dashes: tracks and paths; a cross: closed that day.',
  mapScale: (km: string) => `${km} km`,
  north: 'N',
  roads: [
    'Roads are passable.',
    'Earth roads are difficult after rain: ask before you leave.',
    'Earth roads are closed to all but motorcycles.',
  ],

  boxTitle: 'Box and ice',
  boxStore: (celsius: string) =>
    `Load from the cool store, last thing. It should show about ${celsius} °C. It shows: ______ °C.`,
  boxStoreUnstated: 'Load from the cool store, last thing. It shows: ______ °C.',
  boxRoom: 'This depot has no cool store: load from its coolest place, last thing.',
  boxIce: (kg: string) =>
    `${kg} kg of ice packs, taken out until they sweat and rattle. Frozen packs must not touch the inoculant: card on all sides.`,
  boxNoIce: 'No ice is planned for this trip. Never put freezer-cold packs against the inoculant.',
  boxNone: 'No cold box: cartons in the middle of the load, covered, out of the sun, never beside the engine.',
  boxOrder: 'Last stop in first, first stop on top. Thermometer in the middle, not against ice.',
  boxClosed: 'Keep it shut. Open once at each stop, in the shade, for as short as you can.',
  boxShade: 'Park in the shade. A box in the sun is far warmer outside than the air.',
  boxBack: 'Bring ice packs and box back. Borrow no ice and no room from a vaccine or medicine fridge.',
  seedTitle: 'Loading the seed',
  seedDry: 'Bags dry, off the floor, under a cover. No wet bag, no torn bag. Nothing else on the load.',
  seedTreated: (lots: string) =>
    `Treated seed, poisonous: lots ${lots}. Gloves. Never with food, feed or people on the load. Never spilt near water.`,
  fertiliserApart:
    'Fertiliser under the seed or beside it, dry, never against packs of inoculant. Gloves: it burns and draws water.',
  seedOrder: 'Last stop in first. Lift with two. Count the bags in and out.',
  nextTrip: (trip: string, kg: string) => `Trip ${trip}: load again at the depot, ${kg} kg of ice.`,

  stops: 'Stops',
  stopHeads: {
    stop: 'stop, receiver, phone',
    hours: 'arrive, leave',
    km: 'km',
    goods: 'hand over, lot',
    expect: 'expect °C',
    read: 'read °C',
    counted: 'counted',
    signs: 'receiver signs, time',
  },
  tripHead: (trip: string, leave: string, by: string, back: string) =>
    `Trip ${trip}: leave ${leave}, by ${by}; back about ${back}`,
  noReceiver: 'receiver _____________',
  noPhone: 'phone ________________',
  forCommunity: (name: string) => `for ${name}`,
  goodsPacks: (count: string, isOne: boolean, crop: string) => `${count} ${isOne ? 'pack' : 'packs'} ${crop}`,
  goodsBags: (count: string, kg: string, isOne: boolean, crop: string) =>
    `${count} ${isOne ? 'bag' : 'bags'} of ${kg} kg, ${crop}`,
  goodsFertiliser: (count: string, size: string, isOne: boolean, crop: string) =>
    `${count} ${isOne ? 'bag' : 'bags'} of ${size}, fertiliser for ${crop}`,
  goodsOther: (count: string, size: string, kind: string) => `${count} × ${size}, ${kind}`,
  kinds: { inoculant: 'inoculant', seed: 'seed', sticker: 'sticker', fertiliser: 'fertiliser' },
  wayHome: (km: string) => `${km} km back`,
  arriveBack: (clock: string) => clock,
  sumPacks: (packs: string) => `${packs} packs`,
  sumBags: (bags: string) => `${bags} bags`,
  withheld: {
    expired: 'DO NOT HAND OVER: past its expiry date. Back to the depot.',
    'on-hold': 'DO NOT HAND OVER: on hold. Back to the depot.',
    heated: 'DO NOT HAND OVER: met heat, on hold. Back to the depot.',
  },

  lateTitle: 'If late, hot, closed or already sown',
  notAway: (clock: string) => `Not away by ${clock}`,
  notAwayDo: 'Do not leave. Unload the inoculant into the cool store and ring: the day is planned again.',
  notAwaySeedDo: 'Ring before you leave: the last places may be closed, or it may get dark on the way.',
  late: '30 min late',
  lateDo:
    'Go on with less time at each stop, never with more speed. Read the box at every stop. Not before dark: turn back.',
  boxAt: (celsius: string) => `Box at ${celsius} °C`,
  storageDo: (hours: string) =>
    `Storage limit of the label. Write the hour. ${hours} Mark packs given later with a cross and the hour.`,
  storageAllowed: (hours: string) => `From then ${hours} h are allowed.`,
  storageOpen: 'Hand over what is left without delay.',
  hotDo: 'Hand none over. Mark every pack left with a cross, bring it back on the hold note, ring. Throw none away.',
  closed: 'Place closed, nobody there',
  closedDo:
    'Ring the receiver, wait 15 minutes, go on. Leave nothing unsigned, nothing with a neighbour. Bring it back.',
  sown: 'Already sown',
  sownDo: 'Do not leave packs: seed in the ground cannot be coated. Bring them back, unopened, on the hold note.',
  tooDry: 'Fields too dry to sow',
  tooDryDo: 'Packs stay unopened in the coolest shaded room of the receiver, or come back where there is none.',
  roadShut: 'Road shut, river up',
  roadShutDo: 'Never cross moving water. Turn back; stops left out are planned again.',
  differs: 'Count differs',
  differsDo: 'Write both numbers, both sign. Hand over what is there. Change no lot number.',

  eveningTitle: 'The evening before',
  evening: {
    rain: 'Rain today and forecast asked: roads still open',
    receivers: 'Each receiver rung: there, not sown yet, place open',
    ice: (kg: string) => `Ice frozen: ${kg} kg`,
    fuel: (km: string) => `Fuel for ${km} km and a third more, tyres, lights, rope`,
    box: 'Box clean, thermometer reads the same as the store’s',
    papers: 'Waybill, handover sheets, distribution lists and hold note with this sheet',
    seedThere: 'Seed was signed for at each stop before its inoculant goes',
  },
  crewTitle: 'The crew',
  crewHeat: (maximum: string, litres: string) =>
    `Up to ${maximum} °C in the shade. Carry ${litres} L of water a head, drink before you are thirsty, rest in shade at each stop. Headache, giddiness or cramp: stop, shade, water, ring.`,
  crewRoad: 'Daylight only. Belt or helmet on. Nobody rides on the load. Turning back is always right.',
  atStopTitle: 'At each stop',
  atStop:
    'Read the thermometer before opening. Ask: sown already? Count together, write both numbers, sign. Give the handover sheet with the packs and show the coating once.',
  atStopSeed:
    'Ask: sown already? Count the bags together, write both numbers, sign. Show the label: treated seed is poisonous.',
  signs: {
    keeper: 'Storekeeper, goods out, time',
    driver: 'Driver, time',
    back: 'Storekeeper, received back, °C, time',
  },

  waybillTitle: (vehicle: string, day: string) => `Waybill ${vehicle}, ${day}`,
  waybillAbout: (depot: string, kind: string) =>
    `From ${depot} by ${kind}. One copy with the goods, one stays at the store.`,
  waybillNumber: 'Waybill number',
  seal: 'Seal number',
  thermometer: 'Thermometer number',
  goodsOut: 'Goods out',
  goodsOutHeads: {
    lot: 'lot',
    goods: 'goods',
    expires: 'last day',
    packs: 'packs or bags',
    kg: 'kg',
    loaded: 'loaded',
    condition: 'condition',
  },
  received: 'Goods received',
  receivedHeads: {
    stop: 'stop',
    place: 'place',
    goods: 'goods sent, lot',
    good: 'received good',
    bad: 'short, torn, wet, hot',
    celsius: '°C',
    signs: 'receiver: name, signature, time',
  },
  receivedNote:
    'Received in good order but for what is written. Hot, torn, wet or past its last day: not accepted, back on the hold note.',
  trip: (trip: string) => `Trip ${trip}`,

  holdTitle: (vehicle: string, day: string) => `Hold and return note ${vehicle}, ${day}`,
  holdAbout:
    'For every pack or bag that comes back. What comes back is on hold: nobody uses it, gives it out or throws it away until a named person clears it on stated evidence.',
  holdHeads: {
    lot: 'lot',
    goods: 'goods',
    carried: 'carried',
    back: 'came back',
    why: 'why',
    stop: 'stop',
    celsius: 'hottest °C',
    hours: 'hours above limit',
    initials: 'initials',
  },
  holdWhy: 'Why',
  holdReasons: {
    S: 'already sown',
    H: 'box at 40 °C or more',
    L: 'above the label’s storage limit for longer than allowed',
    T: 'torn, wet or opened',
    C: 'place closed, nobody there, road shut',
    X: 'past its last day, or lot on hold',
    R: 'not wanted',
  },
  holdStore:
    'Keep it apart, marked HOLD, in the cool store (S, C and R unopened) or on the hold shelf (H, L, T and X). Never mix lots.',
  holdOther: 'other lots that came back',
  clearTitle: 'Cleared, or not',
  clearHeads: {
    lot: 'lot',
    packs: 'packs',
    evidence: 'evidence: count, laboratory, date',
    decided: 'cleared or not',
    name: 'name and signature',
    date: 'date',
  },
  clearNote:
    'Retesting until a lot passes is not a clearance. Packs not cleared are disposed of by national rules, away from water, and written on the stock card.',
  holdSigns: {
    driver: 'Driver, brought back, time',
    keeper: 'Storekeeper, put on hold, time',
    officer: 'Zone officer, seen',
  },
} as const;
