import type { Ring, Structure } from '../structure.ts';

/** A size that a person may set: its label, its unit, what it is at first, and its bounds, both included. */
export interface ShapeSize {
  readonly key: string;
  readonly label: string;
  /** Metres, degrees, or a whole number of things. */
  readonly unit: 'length' | 'angle' | 'count';
  readonly first: number;
  readonly least: number;
  readonly most: number;
}

/** What a shape is made of. The street is in the south, x = 0 and y = 0 the south-west corner of the plot. */
export interface ShapeParts {
  /** Their ids and names are free of one another only; all sizes are guessed. */
  readonly structures: readonly Structure[];
  readonly boundary: Ring;
}

/** A generic site: no real place, only sizes. */
export interface Shape {
  readonly key: string;
  readonly name: string;
  /** What is in it, in a few words. */
  readonly says: string;
  readonly sizes: readonly ShapeSize[];
  /** Its structures. A size that is not given is as at first; one out of bounds is brought to the nearer bound. */
  readonly make: (given: Readonly<Partial<Record<string, number>>>) => ShapeParts;
}

type SizesOf<S extends readonly ShapeSize[]> = Readonly<Record<S[number]['key'], number>>;

/** A shape from its sizes and a function that may rely on every one of them being there and within its bounds. */
export function shapeFrom<const S extends readonly ShapeSize[]>(
  about: Pick<Shape, 'key' | 'name' | 'says'>,
  sizes: S,
  build: (sizes: SizesOf<S>) => ShapeParts,
): Shape {
  const within = (size: ShapeSize, given: number | undefined): number => {
    const value = given !== undefined && Number.isFinite(given) ? given : size.first;
    const kept = Math.min(size.most, Math.max(size.least, value));
    return size.unit === 'count' ? Math.round(kept) : kept;
  };
  const make = (given: Readonly<Partial<Record<string, number>>>): ShapeParts => {
    const all: Record<string, number> = {};
    for (const size of sizes) all[size.key] = within(size, given[size.key]);
    return build(hasAll(all, sizes) ? all : neverMissing());
  };
  return { ...about, sizes, make };
}

const hasAll = <S extends readonly ShapeSize[]>(
  all: Readonly<Record<string, number>>,
  sizes: S,
): all is SizesOf<S> => sizes.every(({ key }) => all[key] !== undefined);

const neverMissing = (): never => {
  throw new RangeError('a shape lacks one of its own sizes');
};

/** A length to be set, m. */
export const length = <K extends string>(key: K, label: string, first: number, least: number, most: number) =>
  ({ key, label, unit: 'length', first, least, most }) as const;
/** An angle to be set, °. */
export const angle = <K extends string>(key: K, label: string, first: number, least: number, most: number) =>
  ({ key, label, unit: 'angle', first, least, most }) as const;
/** A number of things to be set. */
export const count = <K extends string>(key: K, label: string, first: number, least: number, most: number) =>
  ({ key, label, unit: 'count', first, least, most }) as const;
