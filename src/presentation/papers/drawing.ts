/** A place on a drawing, in its own units, from the upper left corner. */
export type Spot = readonly [x: number, y: number];

export type Mark =
  | {
      readonly kind: 'line';
      readonly spots: readonly Spot[];
      readonly width: number;
      readonly dashes?: string;
      readonly tone?: 'grey' | 'paper';
    }
  | { readonly kind: 'shape'; readonly spots: readonly Spot[]; readonly fill: 'black' | 'white' | 'none' }
  | { readonly kind: 'disc'; readonly at: Spot; readonly radius: number; readonly fill: 'black' | 'white' }
  | {
      readonly kind: 'word';
      readonly at: Spot;
      readonly text: string;
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly heavy?: boolean;
      /** A rim of paper around the letters, so that lines below do not strike them out. */
      readonly rim?: boolean;
    };

/** A drawing in black on white. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What it shows, for whoever cannot see it. */
  readonly label: string;
  readonly marks: readonly Mark[];
}
