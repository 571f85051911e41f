/*
 * What each caution says in figures, by its row of the table: lengths m, angles °, shares 0 to 1, exposures ms. Names are as
 * the person calls the things; sentences are made of them in `draw/cautions`.
 */

interface WithinReach {
  readonly row: 29;
  readonly thing: string;
  readonly height: number;
}

interface HoleNear {
  readonly row: 30;
  readonly what: 'lintel' | 'jamb' | 'edge';
  readonly thing: string;
  readonly distance: number;
}

interface InsideEnd {
  readonly row: 31;
  /** Where it comes out above the floor; null where no floor is given. */
  readonly height: number | null;
  readonly floor: string | null;
  /** Between a ceiling and the next floor above it, above the base. */
  readonly joists: { readonly from: number; readonly to: number } | null;
  readonly inJoists: boolean;
}

interface Services {
  readonly row: 32;
  readonly what: 'line' | 'top' | 'corner' | 'meter';
  readonly thing: string;
  readonly distance: number;
}

interface OldBoards {
  readonly row: 33;
  readonly year: number | null;
}

interface Ladder {
  readonly row: 34;
  /** Of the fixing above the ladder's foot. */
  readonly height: number;
  readonly out: number;
  /** Name of what it stands on. */
  readonly on: string;
  readonly why: 'thing' | 'slope' | 'neighbour' | 'high' | null;
}

interface Sway {
  readonly row: 35;
  readonly of: 'pole' | 'arm';
  readonly length: number;
  readonly angle: number;
}

interface Flue {
  readonly row: 36;
  readonly thing: string;
  readonly distance: number;
}

interface CableHole {
  readonly row: 37;
  /** How much higher the inner end is; null where the thickness of the wall is not given. */
  readonly rise: number | null;
  readonly plug: number;
  readonly fall: number;
  /** The hole does not lie under the base. */
  readonly bare: boolean;
}

interface OtherEarth {
  readonly row: 38;
  readonly why: 'building' | 'pole' | 'gate';
  readonly thing: string;
  /** Over ground to the building that holds the recorder. */
  readonly distance: number;
}

interface Power {
  readonly row: 39;
  readonly reserved: number;
  readonly budget: number;
  readonly spare: number;
}

interface Beyond {
  readonly row: 40;
  readonly band: string;
  readonly area: number;
  readonly bound: number;
  /** Names of windows and doors beyond it. */
  readonly openings: readonly string[];
}

/** Figures of rows about holes, fixings, cables and neighbours. */
export type FixingFigures =
  | WithinReach
  | HoleNear
  | InsideEnd
  | Services
  | OldBoards
  | Ladder
  | Sway
  | Flue
  | CableHole
  | OtherEarth
  | Power
  | Beyond;
