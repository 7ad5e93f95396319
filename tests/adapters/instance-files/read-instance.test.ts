import { describe, expect, it } from 'vitest';
import { InstanceFault, readInstance } from '../../../src/adapters/instance-files/read-instance.ts';

const VRPLIB = `NAME : small
TYPE : CVRP
DIMENSION : 3
EDGE_WEIGHT_TYPE : EUC_2D
CAPACITY : 10
NODE_COORD_SECTION
1 0 0
2 3 4
3 0 2.5
DEMAND_SECTION
1 0
2 4
3 5
DEPOT_SECTION
1
-1
EOF
`;

const SOLOMON = `S1

VEHICLE
NUMBER     CAPACITY
  2         20

CUSTOMER
CUST NO.  XCOORD.  YCOORD.  DEMAND  READY TIME  DUE DATE  SERVICE TIME

  0 0 0 0 0 100 0
  1 1 1 7 10 20 5
`;

const MIXED = ` //Lines 1:1 : a comment
 2 2 999999.0 0.0 1 1
 1 20 5 1.0
 2 30 0 1.1
 0 0
 3 4 18
 0 1 26
`;

const EXPLICIT = VRPLIB.replace('EUC_2D', 'EXPLICIT\nEDGE_WEIGHT_FORMAT : LOWER_ROW').replace(
  'DEMAND_SECTION',
  'EDGE_WEIGHT_SECTION\n7\n8 9\nDEMAND_SECTION',
);

const METRES = ` //a comment
 2 1 999999 0
 3 30 0 1.1
 0
 0 700 900
 700 0 800
 900 800 0
 1 18
 2 26
`;

describe('instance files', () => {
  it('reads VRPLIB text with lengths to the nearest whole number (TSPLIB, Reinelt 1991)', () => {
    const instance = readInstance(VRPLIB);
    expect([...instance.lengths]).toEqual([0, 5, 3, 5, 0, 3, 3, 3, 0]);
    expect(instance.vehicleTypes[0]?.capacity).toBe(10);
    expect(instance.timed).toBe(false);
  });

  it('reads explicit lengths in the orders of TSPLIB', () => {
    expect([...readInstance(EXPLICIT).lengths]).toEqual([0, 7, 8, 7, 0, 9, 8, 9, 0]);
  });

  it('reads Solomon text in tenths, cut off', () => {
    const instance = readInstance(SOLOMON);
    expect(instance.lengths[1]).toBe(14);
    expect([instance.opens[1], instance.closes[1], instance.service[1]]).toEqual([100, 200, 50]);
    expect(instance.costUnits).toBe(10);
  });

  it('reads mixed fleets of limited number, unrounded', () => {
    const instance = readInstance(MIXED);
    const types = instance.vehicleTypes.map((type) => [
      type.numbers,
      type.capacity,
      type.fixedCost,
      type.costPerLength,
    ]);
    expect(types).toEqual([
      [[1], 20, 5, 1],
      [[2, 3], 30, 0, 1.1],
    ]);
    expect(instance.lengths[1]).toBe(5);
  });

  it('reads a matrix in metres, and no more vehicles than there are customers', () => {
    expect([...readInstance(METRES).lengths]).toEqual([0, 0.7, 0.9, 0.7, 0, 0.8, 0.9, 0.8, 0]);
    const many = [METRES.replace(' 3 30', ' 900000000 30'), SOLOMON.replace('  2  ', '  900000000  ')];
    many.push(VRPLIB.replace('CAPACITY : 10', 'CAPACITY : 10\nVEHICLES : 900000000'));
    for (const text of many) expect(readInstance(text).vehicleTypes[0]?.numbers.length).toBeLessThan(3);
  });

  it.each([
    ['nothing', '', 'no routing instance'],
    ['no number', VRPLIB.replace('2 3 4', '2 x 4'), 'Line 8'],
    ['a word for a number', SOLOMON.replace('10 20 5', 'NaN 20 5'), 'Line 11'],
    ['a row too few', VRPLIB.replace('3 0 2.5\n', ''), '2 rows for 3 places'],
    ['a place twice', VRPLIB.replace('3 0 2.5', '2 0 2.5'), 'stands twice'],
    ['an unknown kind', VRPLIB.replace('CVRP', 'VRPX'), 'VRPX is not read'],
    ['no vehicle', VRPLIB.replace('CAPACITY : 10', 'CAPACITY : 10\nVEHICLES : 0'), 'there are none'],
    ['no customers', SOLOMON.replace(/ {2}1 1 1.*\n/, ''), 'no customers'],
    ['fewer types than said', MIXED.replace(' 2 2 999999.0', ' 2 9 999999.0'), 'types'],
    ['no number in a matrix', EXPLICIT.replace('8 9', 'NaN 9'), 'Line 13'],
    ['an endless length', EXPLICIT.replace('8 9', 'Infinity 9'), 'Line 13'],
    ['a length below nothing', EXPLICIT.replace('8 9', '-8 9'), 'less than nothing'],
    ['a demand below nothing', VRPLIB.replace('2 4\n', '2 -4\n'), 'less than nothing'],
    ['no demands', VRPLIB.replace(/DEMAND_SECTION[^D]*/, ''), 'no DEMAND_SECTION'],
    ['more places than fit', VRPLIB.replace('DIMENSION : 3', 'DIMENSION : 900000000'), 'at most'],
    ['no vehicles in Solomon text', SOLOMON.replace('  2         20', '  0         20'), 'number of vehicles is 0'],
    ['no vehicles of a type', MIXED.replace(' 1 20 5 1.0', ' 0 20 5 1.0'), 'number of vehicles is 0'],
    ['no number in a matrix of metres', METRES.replace('700', 'NaN'), 'Line 5'],
    ['a customer there is not', METRES.replace(' 2 26', ' 7 26'), 'no customer 7'],
    ['no capacity', VRPLIB.replace('CAPACITY : 10\n', ''), 'no CAPACITY'],
  ])('says what is wrong: %s', (_, text, words) => {
    expect(() => readInstance(text)).toThrow(InstanceFault);
    expect(() => readInstance(text)).toThrow(words);
  });
});
