/** Published instances by family, with the best known cost and the family's limit in percent at 30 s. */
export interface Family {
  readonly name: string;
  readonly limit: number;
  readonly files: readonly {
    readonly file: string;
    /** In what the set reports; sources as in the set's own papers. */
    readonly best: number;
    /** Gap of the best public C++ solver after 30 s on the same kind of machine, percent; absent where it was not measured. */
    readonly beside?: number;
  }[];
}

export const FAMILIES: readonly Family[] = [
  {
    // Augerat 1995; Christofides & Eilon 1969: proven optimal.
    name: 'A, B, E, P',
    limit: 0.1,
    files: [
      { file: 'cvrp/A-n80-k10.vrp', best: 1763, beside: 0 },
      { file: 'cvrp/B-n78-k10.vrp', best: 1221, beside: 0 },
      { file: 'cvrp/E-n51-k5.vrp', best: 521, beside: 0 },
      { file: 'cvrp/P-n76-k5.vrp', best: 627, beside: 0.27 },
    ],
  },
  {
    // Uchoa et al. 2017, Eur. J. Oper. Res. 257:845.
    name: 'X',
    limit: 0.47,
    files: [
      { file: 'cvrp/X-n101-k25.vrp', best: 27591, beside: 0.29 },
      { file: 'cvrp/X-n200-k36.vrp', best: 58578, beside: 0.81 },
      { file: 'cvrp/X-n256-k16.vrp', best: 18839, beside: 0.57 },
    ],
  },
  {
    // Solomon 1987, Oper. Res. 35:254; Gehring & Homberger 1999. Lengths in tenths, cut off.
    name: 'hours',
    limit: 0.15,
    files: [
      { file: 'vrptw/R101.txt', best: 1637.7, beside: 0 },
      { file: 'vrptw/C101.txt', best: 827.3 },
      { file: 'vrptw/RC101.txt', best: 1619.8 },
      { file: 'vrptw/R112.txt', best: 948.6, beside: 0.21 },
      { file: 'vrptw/R201.txt', best: 1143.2, beside: 0 },
      { file: 'vrptw/RC208.txt', best: 776.1, beside: 0 },
      { file: 'vrptw/C1_2_1.txt', best: 2698.6, beside: 0 },
    ],
  },
  {
    // Taillard 1999 and Prins 2009; Duhamel, Lacomme & Prodhon 2011; Pessoa, Sadykov & Uchoa 2018.
    name: 'mixed and limited fleets',
    limit: 0.51,
    files: [
      { file: 'hfvrp/HVRP13.txt', best: 1517.84 },
      { file: 'hfvrp/HVRP17.txt', best: 1061.96 },
      { file: 'hfvrp/HVRP_DLP_10.txt', best: 2107.55, beside: 0 },
      { file: 'hfvrp/X101-FSMFD.vrp', best: 35170.24 },
      { file: 'hfvrp/X115-HVRP.vrp', best: 19412.56, beside: 0.06 },
    ],
  },
  {
    // Yang 2023: several trips, hours and releases; proven optimal.
    name: 'several trips',
    limit: 1.7,
    files: [
      { file: 'mtvrptwr/C202R0.5.vrp', best: 1547.3, beside: 0.63 },
      { file: 'mtvrptwr/R201R0.5.vrp', best: 1442.6, beside: 3.15 },
    ],
  },
  {
    // Cordeau & Laporte 2001.
    name: 'site-dependent',
    limit: 0.1,
    files: [{ file: 'sdvrptw/PR01.vrp', best: 1655.42, beside: 0 }],
  },
];
