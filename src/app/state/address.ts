import { type Place, VIEW_NAMES, type ViewStore } from './view-store.ts';

const DATE = /^\d{4}-\d{2}-\d{2}$/;
const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$/;
const LONGEST_ID = 200;

/** The place that an address names: `#/days?zone=Z03&day=2026-11-24&hour=10:20`. What it does not understand is left out. */
export function placeOfAddress(hash: string): Place {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const said = new URLSearchParams(query);
  const id = (name: string) => said.get(name)?.slice(0, LONGEST_ID) || null;
  const day = said.get('day');
  const clock = CLOCK.exec(said.get('hour') ?? '');
  return {
    view: VIEW_NAMES.find((name) => name === path) ?? 'stock',
    zone: id('zone'),
    community: id('community'),
    day: day !== null && DATE.test(day) ? day : null,
    hour: clock ? Number(clock[1]) * 60 + Number(clock[2]) : null,
    paper: id('paper'),
  };
}

export function addressOfPlace({ view, zone, community, day, hour, paper }: Place): string {
  const said = new URLSearchParams();
  if (zone !== null) said.set('zone', zone);
  if (community !== null) said.set('community', community);
  if (day !== null) said.set('day', day);
  if (paper !== null && view === 'papers') said.set('paper', paper);
  if (hour !== null) said.set('hour', clock(hour));
  // A colon is allowed there (RFC 3986) and easier to read.
  const query = said.toString().replaceAll('%3A', ':');
  return `#/${view}${query === '' ? '' : `?${query}`}`;
}

function clock(minutes: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60) % 24)}:${two(Math.floor(minutes % 60))}`;
}

/** Keeps address and store saying the same. A new view is a step back can undo; a new selection is not. */
export function syncAddress(store: ViewStore, page: Window): void {
  let shown = store.getState().view;
  store.subscribe((state) => {
    const address = addressOfPlace(state);
    if (address === page.location.hash) return;
    if (state.view === shown) page.history.replaceState(null, '', address);
    else page.history.pushState(null, '', address);
    shown = state.view;
  });
  page.addEventListener('popstate', () => {
    const place = placeOfAddress(page.location.hash);
    shown = place.view;
    store.getState().go(place);
  });
}
