import { defaultSettings } from './defaultSettings.ts';
import { PLAN_VERSION, type Plan } from './plan.ts';
import { asDrawn } from './situations.ts';

/**
 * A plan with nothing drawn yet: flat ground at 0, one situation, the default settings.
 * @param id   by which the device keeps it; whoever has a clock or chance makes it
 * @param name as the person calls it
 */
export const emptyPlan = (id: string, name: string): Plan => ({
  version: PLAN_VERSION,
  id,
  name,
  origin: null,
  ground: { kind: 'flat', height: 0 },
  boundary: null,
  structures: {},
  structureOrder: [],
  cameras: {},
  cameraOrder: [],
  patches: {},
  patchOrder: [],
  lamps: {},
  lampOrder: [],
  requirements: {},
  requirementOrder: [],
  situations: { [asDrawn.id]: asDrawn },
  situationOrder: [asDrawn.id],
  groups: {},
  groupOrder: [],
  pictures: {},
  pictureOrder: [],
  settings: defaultSettings,
  credits: [],
});
