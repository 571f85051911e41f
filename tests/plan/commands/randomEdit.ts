import { accept, type Outcome } from '../../../src/base/fault.ts';
import type { Vec2 } from '../../../src/base/vector.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { addGroup, ungroup } from '../../../src/plan/commands/addGroup.ts';
import { addLamp, newLamp } from '../../../src/plan/commands/addLamp.ts';
import { addOpening } from '../../../src/plan/commands/addOpening.ts';
import { addPatch, newPatch } from '../../../src/plan/commands/addPatch.ts';
import { addPicture, setPicture } from '../../../src/plan/commands/addPicture.ts';
import { addService } from '../../../src/plan/commands/addService.ts';
import { addSituation, newSituation } from '../../../src/plan/commands/addSituation.ts';
import { addStructure, type Added } from '../../../src/plan/commands/addStructure.ts';
import { admitted } from '../../../src/plan/commands/admitted.ts';
import { alignThings } from '../../../src/plan/commands/alignThings.ts';
import { bowEdge } from '../../../src/plan/commands/bowEdge.ts';
import { copyText, pasteText } from '../../../src/plan/commands/copyText.ts';
import { copyThings, type Copied } from '../../../src/plan/commands/copyThings.ts';
import { deleteThings } from '../../../src/plan/commands/deleteThings.ts';
import { joinCorner } from '../../../src/plan/commands/joinCorner.ts';
import { markThings } from '../../../src/plan/commands/markThing.ts';
import { mirrorThings, moveThings, turnThings } from '../../../src/plan/commands/moveThings.ts';
import { renameThing } from '../../../src/plan/commands/renameThing.ts';
import { reorder } from '../../../src/plan/commands/reorder.ts';
import { setBoundary } from '../../../src/plan/commands/setBoundary.ts';
import { setCorner } from '../../../src/plan/commands/setCorner.ts';
import { setEdgeLength } from '../../../src/plan/commands/setEdgeLength.ts';
import { setFloors } from '../../../src/plan/commands/setFloors.ts';
import { removeOpening, setOpening } from '../../../src/plan/commands/setOpening.ts';
import { setOutline } from '../../../src/plan/commands/setOutline.ts';
import { removeService, setService } from '../../../src/plan/commands/setService.ts';
import { setSituation } from '../../../src/plan/commands/setSituation.ts';
import { setSpots } from '../../../src/plan/commands/setSpots.ts';
import { resizeStructure, setStructure } from '../../../src/plan/commands/setStructure.ts';
import { setTree, setVehicle } from '../../../src/plan/commands/setTree.ts';
import { slideEdge } from '../../../src/plan/commands/slideEdge.ts';
import { splitEdge } from '../../../src/plan/commands/splitEdge.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Chance } from '../../house/seeded.ts';
import { openingWith, rectangle } from '../../model/sampleStructures.ts';
import { randomStructure } from '../../model/randomStructures.ts';
import { eyesOf, randomMount } from '../randomPlan.ts';
import type { Edit } from './pickedThings.ts';
import {
  place,
  length,
  finite,
  any,
  movables,
  outlined,
  cornerOf,
  onEdge,
  onOpening,
  onService,
} from './pickedThings.ts';

/** An edit that was tried, whether or not it was refused. */
interface Tried {
  readonly name: string;
  readonly outcome: Outcome<Plan>;
}

const added = (outcome: Outcome<Added> | Outcome<Copied>): Outcome<Plan> =>
  outcome.ok ? accept(outcome.value.plan) : outcome;

/** Any command with any values, on whichever thing it finds; some are nonsense that must be refused. */
export function randomEdit(plan: Plan, chance: Chance): Tried {
  const kinds = Object.keys(edits);
  for (;;) {
    const name = chance.pick(kinds);
    const outcome = edits[name]?.(plan, chance);
    if (outcome) return { name, outcome };
  }
}

const edits: Readonly<Record<string, Edit>> = {
  addStructure: (plan, chance) => {
    if (plan.structureOrder.length > 8) return undefined;
    const { id: _, name: __, ...draft } = randomStructure(chance);
    const ids =
      'openings' in draft ? draft.openings.map((o) => ({ ...o, id: `o${chance.whole(0, 1e9)}` })) : [];
    const outcome = addStructure(plan, 'openings' in draft ? { ...draft, openings: ids } : draft);
    return added(outcome);
  },
  addCamera: (plan, chance) => {
    const host = any(plan, chance);
    if (!host || plan.cameraOrder.length > 6) return undefined;
    return accept(addCamera(plan, newCamera(plan, randomMount(chance, host), { pan: 10, tilt: 20 })));
  },
  addLamp: (plan, chance) =>
    plan.lampOrder.length > 4 ? undefined : accept(addLamp(plan, newLamp(plan, place(chance)))),
  addPatch: (plan, chance) =>
    plan.patchOrder.length > 4
      ? undefined
      : admitted(plan, addPatch(plan, newPatch(plan, rectangle(chance.between(1, 5), 3, place(chance))))),
  addPicture: (plan, chance) =>
    plan.pictureOrder.length > 4
      ? undefined
      : added(
          addPicture(plan, {
            file: { sha: 'b'.repeat(64), type: 'image/jpeg', width: 640, height: chance.whole(0, 480) },
            use: { kind: 'site', at: place(chance), metresPerPixel: null, turn: 0, strength: 0.5 },
          }),
        ),
  setPicture: (plan, chance) => {
    const [id] = plan.pictureOrder;
    return id === undefined
      ? undefined
      : setPicture(plan, id, {
          use: { kind: 'photo', at: [...place(chance), 1.6], heading: length(chance, 0, 359) },
        });
  },
  addSituation: (plan, chance) =>
    plan.situationOrder.length > 3
      ? undefined
      : accept(addSituation(plan, newSituation(plan, `Situation ${chance.whole(0, 99)}`))),
  setSituation: (plan, chance) => {
    const [id] = plan.situationOrder;
    const host = any(plan, chance);
    if (id === undefined || !host) return undefined;
    const [opening] = 'openings' in host ? host.openings : [];
    return accept(
      setSituation(plan, id, {
        away: { structure: host.id, gone: chance.next() < 0.5 },
        ...(opening ? { leaf: { opening: opening.id, stands: chance.pick(['open', 'closed', null]) } } : {}),
      }),
    );
  },
  setCorner: (plan, chance) => {
    const thing = outlined(plan, chance);
    if (!thing) return undefined;
    const corner = chance.whole(0, thing.corners - 1);
    const [x, y] = cornerOf(plan, thing.id, chance.next() < 0.2 ? (corner + 1) % thing.corners : corner);
    const by = chance.pick([0, 0.5, 6]);
    const at: Vec2 = [x + by * chance.between(-1, 1), y + by * length(chance, -1, 1)];
    return setCorner(plan, thing.id, corner, at, chance.pick([undefined, 'measured', 'mapped']));
  },
  joinCorner: (plan, chance) => {
    const thing = outlined(plan, chance);
    return thing && joinCorner(plan, thing.id, chance.whole(0, thing.corners - 1));
  },
  splitEdge: onEdge((plan, chance, id, edge) => splitEdge(plan, id, edge, length(chance, -0.1, 1.1))),
  slideEdge: onEdge((plan, chance, id, edge) => slideEdge(plan, id, edge, length(chance, -3, 3))),
  setEdgeLength: onEdge((plan, chance, id, edge) =>
    setEdgeLength(plan, id, edge, length(chance, 0.1, 14), chance.next() < 0.5, 'measured'),
  ),
  bowEdge: onEdge((plan, chance, id, edge) => bowEdge(plan, id, edge, length(chance, -1, 1))),
  setOutline: (plan, chance) => {
    const thing = outlined(plan, chance);
    if (!thing) return undefined;
    const corners = Array.from({ length: thing.corners }, (_, k) => cornerOf(plan, thing.id, k));
    if (chance.next() < 0.5) return setOutline(plan, thing.id, corners.toReversed());
    return setOutline(plan, thing.id, [...corners, place(chance)]);
  },
  setStructure: (plan, chance) => {
    const host = any(plan, chance);
    if (host?.kind === 'barrier') return setStructure(plan, host.id, { sort: 'hedge', passage: 'screen' });
    if (host?.kind === 'canopy') return setStructure(plan, host.id, { posts: chance.whole(-1, 6) });
    return host?.kind === 'building'
      ? setStructure(plan, host.id, { yearBuilt: chance.whole(0, 2000) })
      : undefined;
  },
  resize: (plan, chance) => {
    const host = any(plan, chance);
    if (!host || host.kind === 'canopy') return undefined;
    const height = finite(chance, 0.5, 8);
    return host.kind === 'building'
      ? resizeStructure(plan, host.id, {
          height,
          roof: { kind: chance.pick(['flat', 'gable', 'hip', 'monopitch']) },
        })
      : resizeStructure(plan, host.id, { height });
  },
  setTree: (plan, chance) => {
    const tree = Object.values(plan.structures).find(({ kind }) => kind === 'tree');
    return tree && setTree(plan, tree.id, { at: place(chance), height: finite(chance, 1, 20) }, 'guessed');
  },
  setVehicle: (plan, chance) => {
    const vehicle = Object.values(plan.structures).find(({ kind }) => kind === 'vehicle');
    return vehicle && setVehicle(plan, vehicle.id, { at: place(chance), heading: finite(chance, 0, 360) });
  },
  setFloors: (plan, chance) => {
    const host = any(plan, chance);
    if (host?.kind !== 'building') return undefined;
    return setFloors(
      plan,
      host.id,
      [{ name: 'Up', level: finite(chance, 2, 4), ceiling: 2.4 }, ...host.floors].slice(0, 3),
    );
  },
  addOpening: (plan, chance) => {
    const host = any(plan, chance);
    if (!host || !('openings' in host) || host.openings.length > 4) return undefined;
    const edges = host.kind === 'building' ? host.outline.length : host.line.length;
    const { id: _, ...draft } = openingWith({
      face: chance.whole(0, edges),
      along: finite(chance, 0, 6),
      width: finite(chance, 0.2, 2),
      height: chance.between(0.3, 2),
    });
    return added(addOpening(plan, host.id, draft));
  },
  setOpening: onOpening((plan, chance, on, id) =>
    setOpening(plan, on, id, { along: finite(chance, 0, 6) }, 'measured'),
  ),
  removeOpening: onOpening((plan, _, on, id) => accept(removeOpening(plan, on, id))),
  addService: (plan, chance) => {
    const host = any(plan, chance);
    if (host?.kind !== 'building' || host.services.length > 3) return undefined;
    return added(
      addService(plan, host.id, {
        kind: 'flue',
        face: chance.whole(0, host.outline.length),
        along: finite(chance, 0, 8),
        height: finite(chance, 0, 3),
        inside: false,
        got: 'guessed',
      }),
    );
  },
  setService: onService((plan, chance, on, id) => setService(plan, on, id, { along: finite(chance, 0, 8) })),
  removeService: onService((plan, _, on, id) => accept(removeService(plan, on, id))),
  moveThings: (plan, chance) =>
    moveThings(plan, movables(plan, chance), [length(chance, -9, 9), chance.between(-9, 9)]),
  turnThings: (plan, chance) =>
    turnThings(plan, movables(plan, chance), place(chance), chance.pick([90, 15, 33.3, 360])),
  mirrorThings: (plan, chance) => mirrorThings(plan, movables(plan, chance), place(chance), place(chance)),
  alignThings: (plan, chance) =>
    alignThings(
      plan,
      movables(plan, chance),
      chance.pick(['west', 'east', 'south', 'north', 'middle', 'centre']),
    ),
  copyThings: (plan, chance) =>
    plan.structureOrder.length > 6
      ? undefined
      : added(copyThings(plan, movables(plan, chance), place(chance), chance.whole(0, 2))),
  paste: (plan, chance) =>
    plan.structureOrder.length > 6
      ? undefined
      : added(pasteText(plan, copyText(plan, movables(plan, chance)), place(chance))),
  deleteThings: (plan, chance) =>
    accept(deleteThings(plan, movables(plan, chance).slice(0, 2), eyesOf(plan))),
  addGroup: (plan, chance) => {
    const ids = [...plan.structureOrder, ...plan.cameraOrder, ...plan.lampOrder].filter(
      () => chance.next() < 0.4,
    );
    return ids.length === 0 ? undefined : accept(addGroup(plan, ids).plan);
  },
  ungroup: (plan, chance) =>
    plan.groupOrder.length === 0 ? undefined : accept(ungroup(plan, chance.pick(plan.groupOrder))),
  reorder: (plan, chance) => {
    const host = any(plan, chance);
    return host && accept(reorder(plan, { kind: 'structure', id: host.id }, chance.whole(-1, 5)));
  },
  rename: (plan, chance) => {
    const host = any(plan, chance);
    return (
      host && accept(renameThing(plan, { kind: 'structure', id: host.id }, `Thing ${chance.whole(0, 9)}`))
    );
  },
  mark: (plan, chance) => {
    const host = any(plan, chance);
    return (
      host && accept(markThings(plan, [{ kind: 'structure', id: host.id }], { locked: chance.next() < 0.5 }))
    );
  },
  setBoundary: (plan, chance) =>
    admitted(plan, setBoundary(plan, chance.next() < 0.3 ? null : rectangle(20, 15, place(chance)))),
  setSpots: (plan, chance) =>
    setSpots(
      plan,
      Array.from({ length: chance.whole(0, 4) }, () => ({
        at: place(chance),
        height: finite(chance, -1, 1),
        got: 'mapped',
      })),
    ),
};
