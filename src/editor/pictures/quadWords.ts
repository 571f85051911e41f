import { quadTrouble, type Quad } from '../../base/homography.ts';

/** The four points as a person reads them on the photo. */
export const CORNER_NAMES = ['Lower left', 'Lower right', 'Upper right', 'Upper left'] as const;

/** What is wrong with four points and how to mend it; null where they are a rectangle seen in perspective. */
export function quadWords(corners: Quad): string | null {
  const trouble = quadTrouble(corners);
  if (trouble === null) return null;
  const name = CORNER_NAMES[trouble.corner] ?? 'One';
  switch (trouble.kind) {
    case 'number':
      return `${name} has no place. Set it again.`;
    case 'near':
      return `${name} lies on another point, or in line with its neighbours. Move it away.`;
    case 'crossed':
      return `The sides cross at ${name.toLowerCase()}. Set the points around the rectangle: lower left, lower right, upper right, upper left.`;
    case 'turned':
      return 'The points run the wrong way round, so that the photo would be mirrored. Set lower left, lower right, upper right, upper left.';
    case 'dent':
      return `${name} lies within the other three. Move it out to its corner of the rectangle.`;
  }
}
