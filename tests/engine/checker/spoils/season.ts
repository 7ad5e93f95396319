import { at, change, later, onFirst, type Spoil, set } from './spoil.ts';

export const SEASON_SPOILS: readonly Spoil[] = [
  { name: 'another season', code: 'E8201', spoil: (p) => change(p.season, { seasonName: 'another' }) },
  {
    name: 'a station not in the file',
    code: 'E8201',
    spoil: (p) =>
      onFirst(
        p.season.stations,
        () => true,
        (i) => set(p.season.stations, i, 'nowhere'),
      ),
  },
  {
    name: 'a past season left out',
    code: 'E8202',
    spoil: (p) => {
      if (p.season.memberYears.length < 2) return false;
      p.season.memberYears.pop();
      p.season.memberOnset.length -= p.season.stations.length;
      return true;
    },
  },
  {
    name: 'onset of a member moved by ten days',
    code: 'E8203',
    spoil: (p) =>
      onFirst(
        p.season.memberOnset,
        (date) => date !== null,
        (i) => set(p.season.memberOnset, i, later(at(p.season.memberOnset, i) ?? '', 10)),
      ),
  },
  {
    name: 'median onset moved by a week',
    code: 'E8204',
    spoil: (p) =>
      onFirst(
        p.season.onset.p50,
        (date) => date !== null,
        (i) => set(p.season.onset.p50, i, later(at(p.season.onset.p50, i) ?? '', 7)),
      ),
  },
  {
    name: 'onset said to be confirmed',
    code: 'E8204',
    spoil: (p) =>
      onFirst(
        p.season.onset.status,
        (status) => status !== 'confirmed',
        (i) => set(p.season.onset.status, i, 'confirmed'),
      ),
  },
  {
    name: 'sowing window moved by a week',
    code: 'E8205',
    spoil: (p) =>
      onFirst(
        p.season.windows.firstOffsetDays,
        () => true,
        (i) => set(p.season.windows.firstOffsetDays, i, at(p.season.windows.firstOffsetDays, i) + 7),
      ),
  },
  {
    name: 'first sowing day moved by a week',
    code: 'E8205',
    spoil: (p) =>
      onFirst(
        p.season.windows.firstP50,
        (date) => date !== null,
        (i) => set(p.season.windows.firstP50, i, later(at(p.season.windows.firstP50, i) ?? '', 7)),
      ),
  },
  {
    name: 'a crop said to ripen though sown later',
    code: 'E8205',
    spoil: (p) => {
      p.season.windows.latestSafe.fill('2027-01-31');
      return true;
    },
  },
  {
    name: 'every road said to be passable',
    code: 'E8206',
    spoil: (p) => p.season.roadState.some((state) => state > 0) && p.season.roadState.fill(0).length > 0,
  },
  {
    name: 'a rest day said to be worked',
    code: 'E8207',
    spoil: (p) =>
      onFirst(
        p.season.workday,
        (worked) => worked === 0,
        (i) => set(p.season.workday, i, 1),
      ),
  },
  {
    name: 'maximum 5 K lower',
    code: 'E8208',
    spoil: (p) =>
      onFirst(
        p.season.tmaxC,
        () => true,
        (i) => set(p.season.tmaxC, i, at(p.season.tmaxC, i) - 5),
      ),
  },
  {
    name: 'a hot day 5 K cooler',
    code: 'E8208',
    spoil: (p) =>
      onFirst(
        p.season.hotTmaxC,
        () => true,
        (i) => set(p.season.hotTmaxC, i, at(p.season.hotTmaxC, i) - 5),
      ),
  },
  {
    name: 'a place said to lie high above its station, where it is cool',
    code: 'E8201',
    spoil: (p) =>
      onFirst(
        p.season.stationRiseM,
        () => true,
        (i) => set(p.season.stationRiseM, i, at(p.season.stationRiseM, i) + 1300),
      ),
  },
];
