/** The sheet's colours by what they are for: #RRGGBB, exact on screen and on paper. */
export interface Ink {
  readonly paper: string;
  readonly ground: string;
  readonly ink: string;
  readonly ink2: string;
  readonly rule: string;
  readonly rule2: string;
  readonly controlEdge: string;
  readonly sunk: string;
  readonly coralText: string;
  /** Drawn at 85 %. */
  readonly coralLine: string;
  readonly saffron: string;
  /** Around saffron wherever it lies on a light ground. */
  readonly casing: string;
  readonly saffronWash: string;
  readonly cardTop: string;
  readonly cardSouth: string;
  readonly cardEast: string;
  readonly cardNorth: string;
  /** Label ink on a band that neither ink nor paper reads on. */
  readonly white: string;
  /** Coarsest first; other counts are worked out from `sevenBands`. */
  readonly fourBands: readonly string[];
  readonly sevenBands: readonly string[];
  /** How much a footprint may darken the ground beside it. */
  readonly contactShade: number;
}

export type Theme = 'light' | 'dark';

export const ink: Readonly<Record<Theme, Ink>> = {
  light: {
    paper: '#FCFAF5',
    ground: '#F5F1E8',
    ink: '#1B2130',
    ink2: '#555A66',
    rule: '#DDD5C6',
    rule2: '#C4BAA7',
    controlEdge: '#8A8578',
    sunk: '#F1ECE1',
    coralText: '#B93C22',
    coralLine: '#C9452A',
    saffron: '#D99A1C',
    casing: '#1B2130',
    saffronWash: '#FBEFD3',
    cardTop: '#FFFEFB',
    cardSouth: '#F6F0E5',
    cardEast: '#E6DDCE',
    cardNorth: '#D8CDBB',
    white: '#FFFFFF',
    fourBands: ['#ABD9DB', '#5EA5B4', '#326D96', '#29246F'],
    sevenBands: ['#B1DBDC', '#7FBBC5', '#559AAE', '#3A779C', '#305489', '#2B3075', '#1A154B'],
    contactShade: 0.24,
  },
  dark: {
    paper: '#14171D',
    ground: '#191C23',
    ink: '#F1ECE2',
    ink2: '#B0AEA8',
    rule: '#2C3039',
    rule2: '#434852',
    controlEdge: '#7F828A',
    sunk: '#101319',
    coralText: '#FF8A6E',
    coralLine: '#E8745A',
    saffron: '#F2B93B',
    casing: '#0E1014',
    saffronWash: '#33290F',
    cardTop: '#4A4E58',
    cardSouth: '#3C404A',
    cardEast: '#2F333C',
    cardNorth: '#272B33',
    white: '#FFFFFF',
    fourBands: ['#234C52', '#3D7985', '#5FA5D8', '#D2D5FC'],
    sevenBands: ['#22454B', '#2F6069', '#3F7C8B', '#5497BD', '#7DB1E1', '#B8CAF3', '#E5E7FE'],
    contactShade: 0.54,
  },
};

/** Share of the coral line's ink. */
export const CORAL_STRENGTH = 0.85;
