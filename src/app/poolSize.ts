/** More workers than this would hold the plan, its solids and their tree more often than they save time. */
const MOST = 4;

/** How many workers assess: one core is left to the window. @param cores undefined where the browser does not tell */
export const poolSize = (cores: number | undefined): number =>
  Math.max(1, Math.min(MOST, (cores ?? MOST) - 1));
