import type { About } from './about.ts';
import type { Found } from './caution.ts';
import { dome, spiders } from './rows/above.ts';
import { backlit } from './rows/backlight.ts';
import { beyond } from './rows/beyond.ts';
import { otherEarth, power } from './rows/cables.ts';
import { clearance } from './rows/clearance.ts';
import { fromAbove, fromTheSide } from './rows/faceAngles.ts';
import { ladder, oldBoards, sway } from './rows/fixing.ts';
import { growing } from './rows/growth.ts';
import { cableHole, holeNear, insideEnd } from './rows/hole.ts';
import { endOfRange, outOfFocus } from './rows/lens.ts';
import { dazzled, infraredShort } from './rows/light.ts';
import { fewPictures, smeared } from './rows/moving.ts';
import { thrownBack } from './rows/nearLight.ts';
import { ownWall } from './rows/ownWall.ts';
import { behindGlass, closing, leaves, sky } from './rows/picture.ts';
import { angleOfOther, lesserStream, upright } from './rows/pictures.ts';
import { plateAndMore, plateTooSmall } from './rows/plates.ts';
import { oneWay } from './rows/presets.ts';
import { flue, services } from './rows/services.ts';
import { sunInPicture } from './rows/sunInPicture.ts';
import { unmeasured } from './rows/unmeasured.ts';
import { untried } from './rows/untried.ts';
import { withinReach } from './rows/withinReach.ts';

/**
 * A row of the table of cautions. One of the plan hangs on no conditions; one of the scene on what stands there, in every
 * conditions anew.
 */
interface Row {
  readonly of: 'plan' | 'scene';
  /** It asks what is in the picture. */
  readonly picture: boolean;
  readonly find: (about: About) => readonly Found[] | Generator<void, readonly Found[], void>;
}

const plan = (find: Row['find'], picture = false): Row => ({ of: 'plan', find, picture });
const scene = (find: Row['find'], picture = false): Row => ({ of: 'scene', find, picture });

/** All rows that the model can measure. Row 20 is two, of what is asked and of the beam; both are of `infraredShort`. */
export const ROWS: Readonly<Record<number, Row>> = {
  1: scene(fromTheSide),
  2: scene(fromAbove),
  3: scene(plateTooSmall),
  4: scene(plateAndMore),
  5: scene(smeared),
  6: scene(fewPictures),
  7: scene(outOfFocus),
  8: plan(endOfRange),
  9: plan(angleOfOther),
  10: scene(lesserStream),
  11: scene(upright),
  12: scene(thrownBack, true),
  13: scene(ownWall, true),
  14: scene(dome),
  15: plan(spiders),
  16: plan(sunInPicture),
  17: scene(sky, true),
  18: scene(backlit),
  19: scene(dazzled),
  20: scene(infraredShort, true),
  21: scene(oneWay),
  22: scene(behindGlass, true),
  23: scene(clearance),
  24: plan(growing, true),
  25: scene(leaves, true),
  26: scene(untried, true),
  27: scene(closing, true),
  28: plan(unmeasured),
  29: scene(withinReach),
  30: plan(holeNear),
  31: plan(insideEnd),
  32: plan(services),
  33: plan(oldBoards),
  34: plan(ladder),
  35: plan(sway),
  36: plan(flue),
  37: plan(cableHole),
  38: plan(otherEarth),
  39: plan(power),
  40: scene(beyond),
};
