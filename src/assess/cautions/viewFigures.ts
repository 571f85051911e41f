/*
 * What each caution says in figures, by its row of the table: lengths m, angles °, shares 0 to 1, exposures ms. Names are as
 * the person calls the things; sentences are made of them in `draw/cautions`.
 */

interface Asked {
  /** Name of what must be seen. */
  readonly requirement: string;
}

interface ThrownBack {
  readonly row: 12;
  readonly thing: string;
  readonly near: number;
  /** How far away what is wanted is. */
  readonly far: number;
  readonly times: number;
  readonly share: number;
}

interface OwnWall {
  readonly row: 13;
  readonly what: 'picture' | 'beam' | 'soffit';
  readonly surface: string;
  /** Off its plane; below 0 past it. */
  readonly angle: number;
}

interface Dome {
  readonly row: 14;
  readonly open: boolean;
  readonly infrared: boolean;
}

interface Spiders {
  readonly row: 15;
  readonly what: 'cover' | 'leaves';
  readonly thing: string;
  readonly distance: number;
}

interface Sun {
  readonly row: 16;
  /** Hours of the zone that the longitude gives, without summer time. */
  readonly from: number;
  readonly to: number;
  /** 1 to 12. */
  readonly months: readonly number[];
  /** On the worst day, min. */
  readonly minutes: number;
  readonly inFrame: boolean;
}

interface Sky {
  readonly row: 17;
  readonly share: number;
}

interface Backlit extends Asked {
  readonly row: 18;
  readonly opening: string;
  readonly share: number;
}

interface Dazzled {
  readonly row: 19;
  readonly what: 'lamp' | 'vehicle';
  readonly thing: string;
  readonly distance: number;
}

interface InfraredShort extends Asked {
  readonly row: 20;
  readonly distance: number;
  readonly range: number;
  readonly sure: number;
  /** It lies beside the beam. */
  readonly beside: boolean;
}

interface BeamNarrow {
  readonly row: '20.beam';
  readonly beam: number;
  readonly share: number;
}

interface OneWay extends Asked {
  readonly row: 21;
}

interface BehindGlass {
  readonly row: 22;
  readonly thing: string;
  readonly share: number;
  readonly near: number;
}

interface CloseToEdge extends Asked {
  readonly row: 23;
  readonly thing: string;
  readonly clear: number;
}

interface Growing {
  readonly row: 24;
  readonly thing: string;
  readonly years: number;
  readonly area: number;
}

interface Leaves {
  readonly row: 25;
  readonly thing: string;
  readonly share: number;
  readonly near: number;
}

interface Untried {
  readonly row: 26;
  readonly what: 'parking' | 'leaf';
  readonly thing: string;
}

interface Closing {
  readonly row: 27;
  readonly thing: string;
  readonly share: number;
  readonly angle: number;
}

interface Unmeasured extends Asked {
  readonly row: 28;
  readonly thing: string;
  readonly size: 'height' | 'place';
  readonly got: 'mapped' | 'guessed';
  readonly tolerance: number;
}

/** Figures of rows about light, what stands in the picture, and what may change. */
export type ViewFigures =
  | ThrownBack
  | OwnWall
  | Dome
  | Spiders
  | Sun
  | Sky
  | Backlit
  | Dazzled
  | InfraredShort
  | BeamNarrow
  | OneWay
  | BehindGlass
  | CloseToEdge
  | Growing
  | Leaves
  | Untried
  | Closing
  | Unmeasured;
