/**
 * One handle of what is selected. `structure` is whose it is; corners and edges count from the first drawn. A side of
 * an opening is named by where it stands seen from outside.
 */
export type Grip =
  | { readonly part: 'corner' | 'edge'; readonly structure: string; readonly index: number }
  | {
      readonly part: 'height' | 'ridge' | 'overhang' | 'base' | 'crown' | 'clear' | 'heading' | 'top';
      readonly structure: string;
    }
  | {
      readonly part: 'opening';
      readonly structure: string;
      readonly opening: string;
      readonly side: 'body' | 'left' | 'right' | 'head' | 'sill';
    }
  | { readonly part: 'boundary'; readonly index: number }
  | { readonly part: 'spot'; readonly index: number }
  | { readonly part: 'picture'; readonly picture: string; readonly point: 'first' | 'second' | 'body' }
  /** Of everything selected. */
  | { readonly part: 'body' | 'turn' };
