import type { Camera } from '../optics/camera.ts';
import type { Solid } from '../model/solid.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, NO_CELLS, plus, type Area } from './area.ts';
import type { FoundArea } from './areaWhere.ts';
import { conditionSets } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { hiddenCells, hiddenExactly } from './hiddenAreas.ts';
import { hiddenBrackets } from './hiddenBrackets.ts';
import type { LitGround } from './litGround.ts';
import { lostAreas, lostCells } from './lostAreas.ts';
import type { BandRule } from './rule.ts';
import { litPieces, pieceAreas, seenPieces, signedAreas, type Piece } from './seenPieces.ts';
import { STATES, TOO_DARK } from './state.ts';
import { areaOf, tally } from './tally.ts';
import type { Within } from './within.ts';

/** An area below this is rounding, m². */
const LEAST_SHOWN = 1e-6;

/**
 * Areas of one camera from exact outlines and curves. What hides how much is counted from cells where `causes` is quick;
 * where borders do not close it lies between bounds.
 * @param night null by day
 */
export function areasOf(
  camera: Camera,
  cells: Cells,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  solids: readonly Solid[],
  causes: 'quick' | 'exact',
  night: LitGround | null = null,
): CameraAreas {
  const conditions = conditionSets(camera, found.footing, rule);
  const pieces = seenPieces(found, within, conditions);
  const lit = night === null ? pieces : litPieces(camera, found, within, rule, night);
  const { seen, light, atLeast } = bandAreas(pieces, lit, found, cells, within);
  const covered = atLeast[0] ?? light;
  const coarse = less(light, covered);
  const dark = less(seen, light);
  const exactly =
    causes === 'exact'
      ? (hiddenExactly(found, within, conditions, solids) ?? hiddenBrackets(found, within, solids))
      : null;
  const { byHider, screened, inside } = exactly ?? hiddenCells(cells, within, solids.length);
  const none = exactly === null ? NO_CELLS : NO_AREA;
  const hidden = byHider.map(({ area }) => area).reduce(plus, none);
  const framed = [hidden, screened, dark, covered, coarse, within.inside].reduce(plus);
  return {
    seen,
    byState: {
      inside: within.inside,
      'out of frame': less(within.total, framed),
      hidden,
      screened,
      'too dark': dark,
      'too coarse': coarse,
      covered,
    },
    insideFrame: inside,
    byBand: atLeast.map((area, band) => less(area, atLeast[band + 1] ?? NO_AREA)),
    byHider: byHider
      .filter(({ area }) => area.value > LEAST_SHOWN)
      .sort((one, two) => two.area.value - one.area.value),
    lost: causes === 'exact' && lit !== null ? lostAreas(lit, found) : lostCells(cells, within.mask),
  };
}

interface Banded {
  readonly seen: Area;
  /** Seen and lit. */
  readonly light: Area;
  /** One a band: covered at it or better. */
  readonly atLeast: readonly Area[];
}

/** @param lit null where only cells can tell what is lit */
function bandAreas(
  pieces: readonly Piece[],
  lit: readonly Piece[] | null,
  found: FoundSight,
  cells: Cells,
  { mask }: Within,
): Banded {
  const bands = pieces[0]?.conditions.atLeast.length ?? 0;
  if (lit === pieces) {
    const [seen, ...atLeast] = pieceAreas(pieces, found, ({ framed, atLeast: at }) => [framed, ...at]).map(
      exact,
    );
    return { seen: seen ?? NO_AREA, light: seen ?? NO_AREA, atLeast };
  }
  const seen = exact(pieceAreas(pieces, found, ({ framed }) => [framed])[0] ?? { value: 0, bound: 0 });
  if (lit === null) {
    const dark = areaOf(tally(cells.grid, cells.state, mask, STATES.length), TOO_DARK, cells.grid);
    const byBand = tally(cells.grid, cells.band, mask, bands + 1);
    const atLeast = Array.from({ length: bands }, (_, band) =>
      Array.from({ length: bands - band }, (_b, above) =>
        areaOf(byBand, band + above + 1, cells.grid),
      ).reduce(plus, NO_AREA),
    );
    return { seen, light: less(seen, dark), atLeast };
  }
  const [light, ...atLeast] = signedAreas(lit, found, ({ framed, atLeast: at, inLight }) =>
    [framed, ...at].map(inLight),
  ).map(exact);
  const none = Array.from({ length: bands }, () => NO_AREA);
  return { seen, light: light ?? NO_AREA, atLeast: lit.length === 0 ? none : atLeast };
}

const exact = ({ value, bound }: FoundArea): Area => ({ value: Math.max(0, value), bound, how: 'exact' });
