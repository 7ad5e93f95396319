/** Words of what a season that runs adds to the views: zones held for rain, communities with records. */
export const SEASON_RUNS_WORDING = {
  holdTitleMm: (mm: string) => `Held until ${mm} mm fall in three days`,
  holdIntro: (lead: string) =>
    `Where that rain has not fallen, packs may wait in the depot; ${lead} days after it they go out. The plan above has them on fixed days.`,
  holdZone: 'Zone',
  holdFallen: 'Fallen, mm',
  holdExpected: 'Expected by',
  holdSpan: (early: string, late: string) => `${early} to ${late}`,
  holdTooLate: 'Too late',
  holdNeverToo: (percent: string) => `never in ${percent}`,
  holdGoes: 'Goes then',
  holdPacks: (packs: string, communities: string, litres: string, depots: string) =>
    `${packs} packs for ${communities} communities, ${litres} L of box, from ${depots}`,
  holdPlanned: 'Planned for',
  holdVerdict: (rule: string, best: string) => `rule keeps ${rule}, best fixed day ${best}`,
  holdNone: (mm: string) =>
    `No zone needs to be held for rain: ${mm} mm have fallen in three days in every one that awaits inoculant.`,
  holdReleased: (zones: string) => `Let go, because that rain has fallen: ${zones}.`,
  soFar: {
    title: (where: string, count: string) => `So far, ${where}: ${count} communities with records`,
    community: 'Community',
    bags: 'bags of seed',
    packs: 'packs of inoculant',
    returned: 'came back',
    toCome: 'packs still to come',
    growers: 'growers',
    women: (count: string) => `(${count} women)`,
    handed: 'Handed over',
    span: (first: string, last: string) => `${first} to ${last}`,
    sown: 'Sown',
  },
  changes: {
    title: 'What changes',
    replan: 'Plan the days again',
    replanNote:
      'From this plan, which people know: packs and days that were told are kept where they can be, and what came free is shared out. Replan above starts anew.',
    allKept: 'Every day that was told is kept.',
    broken: (count: string, isOne: boolean) =>
      `${count} ${isOne ? 'hand-over comes' : 'hand-overs come'} on another day than told, or not.`,
    sameCost: 'Delivery costs the same.',
    dearer: (money: string) => `Delivery costs ${money} more.`,
    cheaper: (money: string) => `Delivery costs ${money} less.`,
    goods: { dry: 'seed', inoculant: 'inoculant', both: 'seed and inoculant', fertiliser: 'fertiliser' },
    brokenPrice: (money: string) => `Reckoned at ${money}.`,
    noLongerGiven: (who: string, what: string) => `${who}: ${what} is not given any more`,
    otherAmount: (who: string, what: string, now: string, before: string, date: string) =>
      `${who}: ${now} packs and bags of ${what}, not ${before}, on ${date}`,
    noLonger: (who: string, what: string, reason: string) => `${who}: ${what} does not come: ${reason}`,
    nowServed: (who: string, what: string, date: string, vehicle: string) =>
      `${who}: ${what} now comes on ${date}, ${vehicle}`,
    otherDay: (who: string, what: string, now: string, before: string, vehicle: string) =>
      `${who}: ${what} on ${now}, not on ${before}, ${vehicle}`,
    otherVehicle: (who: string, what: string, now: string, before: string, date: string) =>
      `${who}: ${what} with ${now}, not ${before}, on ${date}`,
    otherHours: (count: string, isOne: boolean) =>
      `${count} ${isOne ? 'hand-over comes' : 'hand-overs come'} at another hour of its day: print those route sheets again`,
    stopsMore: (vehicle: string, date: string, count: string, isOne: boolean) =>
      `${vehicle}, ${date}: ${count} ${isOne ? 'stop' : 'stops'} more`,
    stopsFewer: (vehicle: string, date: string, count: string, isOne: boolean) =>
      `${vehicle}, ${date}: ${count} ${isOne ? 'stop' : 'stops'} fewer`,
  },
};
