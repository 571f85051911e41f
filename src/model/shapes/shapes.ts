import { cornerShop } from './cornerShop.ts';
import { detached } from './detached.ts';
import { farm } from './farm.ts';
import type { Shape } from './shape.ts';
import { terrace } from './terrace.ts';
import { yard } from './yard.ts';

/** Sites to begin with: no real places, every size a guess to be put right. */
export const SHAPES: readonly Shape[] = [detached, terrace, cornerShop, yard, farm];
