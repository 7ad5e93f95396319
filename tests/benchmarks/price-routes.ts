import type { Published, Trip } from './read-published.ts';

/** Trips of a solution text, ours or published: ` 0 ` parts the trips of one vehicle there. */
export function readSolution(text: string): Trip[] {
  return text.split('\n').flatMap((line) => {
    const [, vehicle, rest = ''] = /^Route #(\d+):(.*)$/.exec(line.trim()) ?? [];
    if (vehicle === undefined) return [];
    const [stops = '', type = '1'] = rest.split('vehicle type');
    return stops.split(/\s0\s/).flatMap((trip) => {
      const customers = trip.trim().split(/\s+/).filter(Boolean).map(Number);
      return customers.length === 0 ? [] : [{ vehicle: Number(vehicle), type: Number(type), customers }];
    });
  });
}

/** Cost of the trips in what the set reports, and everything that breaks a rule of the file. */
export function priceRoutes(published: Published, trips: readonly Trip[]) {
  const faults: string[] = [];
  const visited = trips.flatMap(({ customers }) => customers).sort((a, b) => a - b);
  if (visited.length !== published.customers || visited.some((customer, i) => customer !== i + 1)) {
    faults.push('not everybody is visited once');
  }
  const drivers = new Map<number, Trip[]>();
  trips.forEach((trip, i) => {
    const driver = published.reload ? trip.vehicle : -i - 1;
    drivers.set(driver, [...(drivers.get(driver) ?? []), trip]);
  });
  let cost = 0;
  const used = published.types.map(() => 0);
  for (const own of drivers.values()) {
    const type = (own[0]?.type ?? 1) - 1;
    used[type] = (used[type] ?? 0) + 1;
    cost += published.types[type]?.fixed ?? Number.NaN;
    let back = published.ready[0] ?? 0;
    for (const trip of own) {
      const run = runTrip(published, trip, back);
      cost += run.length * (published.types[type]?.unit ?? Number.NaN);
      back = run.back;
      faults.push(...run.faults);
    }
  }
  published.types.forEach(({ count }, t) => {
    if ((used[t] ?? 0) > count) faults.push(`${used[t]} vehicles of type ${t + 1}, not ${count}`);
  });
  return { cost: cost / published.scale, faults };
}

function runTrip(published: Published, { customers, type }: Trip, ready: number) {
  const { demand, release, ready: opens, due, service, distance, maxDuration } = published;
  const vehicle = published.types[type - 1];
  const faults: string[] = [];
  const sum = (values: readonly number[]) => customers.reduce((total, c) => total + (values[c] ?? Number.NaN), 0);
  if (!(sum(demand) <= (vehicle?.capacity ?? 0))) faults.push(`overloaded: ${customers}`);
  if (vehicle?.clients && customers.some((c) => !vehicle.clients?.has(c))) faults.push(`not allowed: ${customers}`);
  const start = Math.max(ready, ...customers.map((c) => release[c] ?? 0));
  const stops = [0, ...customers, 0];
  const clock = (leave: number) => {
    let minute = leave;
    for (let i = 1; i < stops.length; i++) {
      const [from, to] = [stops[i - 1] ?? 0, stops[i] ?? 0];
      minute = Math.max(minute + distance(from, to), opens[to] ?? 0);
      if (!(minute <= (due[to] ?? 0) + 1e-6)) return null;
      minute += to === 0 ? 0 : (service[to] ?? 0);
    }
    return minute;
  };
  const back = clock(start);
  if (back === null) faults.push(`late: ${customers}`);
  else if (shortest(clock, start, back) > maxDuration + 1e-6) faults.push(`too long: ${customers}`);
  const length = stops.slice(1).reduce((total, to, i) => total + distance(stops[i] ?? 0, to), 0);
  return { length, back: back ?? Number.NaN, faults };
}

/** Time away where the vehicle leaves as late as it still comes back at the same minute, found by halving. */
function shortest(clock: (leave: number) => number | null, earliest: number, back: number): number {
  let [low, high] = [earliest, back];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (clock(middle) === back) low = middle;
    else high = middle;
  }
  return back - low;
}
