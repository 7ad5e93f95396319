import { describe, expect, it } from 'vitest';
import { addressOfPlace, placeOfAddress } from '../../src/app/state/address.ts';

const NOWHERE = { zone: null, community: null, day: null, hour: null, paper: null } as const;

describe('the address', () => {
  it('names view, selection, day and hour, and gives them back', () => {
    const place = {
      view: 'days',
      zone: 'Z 03/ü',
      community: 'C&1',
      day: '2026-11-24',
      hour: 620,
      paper: null,
    } as const;
    const address = addressOfPlace(place);
    expect(address).toBe('#/days?zone=Z+03%2F%C3%BC&community=C%261&day=2026-11-24&hour=10:20');
    expect(placeOfAddress(address)).toEqual(place);
  });

  it('names the paper on the view of papers, and there alone', () => {
    const place = { view: 'papers', ...NOWHERE, day: '2026-11-24', paper: 'route' } as const;
    expect(addressOfPlace(place)).toBe('#/papers?day=2026-11-24&paper=route');
    expect(placeOfAddress(addressOfPlace(place))).toEqual(place);
    expect(addressOfPlace({ ...place, view: 'days' })).toBe('#/days?day=2026-11-24');
  });

  it('is short where nothing is chosen', () => {
    expect(addressOfPlace({ view: 'stock', ...NOWHERE })).toBe('#/stock');
  });

  it.each(['', '#', '#/nowhere', '#/stock?hour=25:00&day=24-11-2026&zone=', '#/stock?hour=10:60', '#//&&&=?'])(
    'takes %s for the first view with nothing chosen',
    (hash) => {
      expect(placeOfAddress(hash)).toEqual({ view: 'stock', ...NOWHERE });
    },
  );
});
