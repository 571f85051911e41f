import type { Fault } from '../base/fault.ts';
import { groundHeight } from '../model/ground.ts';
import { placeMount } from '../model/mounting.ts';
import { findEdition, editions } from './editions.ts';
import type { Plan, PlanCamera } from './plan.ts';
import { listed } from './shapeFaults.ts';
import { fixedNotes, groupFaults } from './belonging.ts';
import { deviceFaults } from './deviceFaults.ts';
import { groundFaults, lampFaults, looksFaults } from './siteFaults.ts';

interface Findings {
  readonly faults: readonly Fault[];
  readonly notes: readonly Fault[];
}

/**
 * What one part of a plan says of another: ids and orders, hosts, modes, situations, edition. Faults refuse the plan;
 * a note lets it open, since nothing is lost by it: a camera whose wall is gone can be fixed to another.
 */
export function referenceFindings(plan: Plan): Findings {
  const ground = groundHeight(plan.ground);
  const notes = Object.values(plan.cameras).flatMap((camera) => mountNotes(plan, camera, ground));
  return {
    faults: [
      ...orderFaults('structures', 'structureOrder', plan.structures, plan.structureOrder),
      ...orderFaults('cameras', 'cameraOrder', plan.cameras, plan.cameraOrder),
      ...orderFaults('patches', 'patchOrder', plan.patches, plan.patchOrder),
      ...orderFaults('lamps', 'lampOrder', plan.lamps, plan.lampOrder),
      ...orderFaults('requirements', 'requirementOrder', plan.requirements, plan.requirementOrder),
      ...orderFaults('situations', 'situationOrder', plan.situations, plan.situationOrder),
      ...orderFaults('groups', 'groupOrder', plan.groups, plan.groupOrder),
      ...orderFaults('pictures', 'pictureOrder', plan.pictures, plan.pictureOrder),
      ...sharedIds(plan),
      ...Object.values(plan.cameras).flatMap(({ id, name, device }) =>
        deviceFaults(device, name, ['cameras', id, 'device']),
      ),
      ...groundFaults(plan.ground).map((fault) => ({ ...fault, path: ['ground', ...fault.path] })),
      ...Object.values(plan.lamps).flatMap(lampFaults),
      ...Object.values(plan.requirements).flatMap(looksFaults),
      ...situationFaults(plan),
      ...groupFaults(plan),
      ...(findEdition(plan.settings.edition)
        ? []
        : [
            {
              code: 'edition.unknown',
              path: ['settings', 'edition'],
              given: plan.settings.edition,
              allowed: listed(editions.map(({ key }) => key)),
            },
          ]),
    ],
    notes: [...notes, ...fixedNotes(plan)],
  };
}

function orderFaults(
  records: string,
  list: string,
  things: Readonly<Record<string, { readonly id: string; readonly name: string }>>,
  order: readonly string[],
): readonly Fault[] {
  const faults: Fault[] = [];
  const seen = new Set<string>();
  order.forEach((id, index) => {
    if (seen.has(id)) faults.push({ code: 'order.twice', path: [list, index], given: id });
    else if (!Object.hasOwn(things, id))
      faults.push({ code: 'order.noRecord', path: [list, index], given: id });
    seen.add(id);
  });
  for (const [key, thing] of Object.entries(things)) {
    const subject = thing.name;
    if (thing.id !== key)
      faults.push({ code: 'id.key', path: [records, key, 'id'], given: thing.id, allowed: key, subject });
    if (!seen.has(key))
      faults.push({ code: 'order.unlisted', path: [list], given: key, allowed: list, subject });
  }
  return faults;
}

/** Structures and cameras share the names of the OBJ's groups; openings those of situations. */
function sharedIds(plan: Plan): readonly Fault[] {
  const faults: Fault[] = [];
  const openings = new Map<string, string>();
  const services = new Map<string, string>();
  for (const structure of Object.values(plan.structures)) {
    if (Object.hasOwn(plan.cameras, structure.id))
      faults.push({
        code: 'id.shared',
        path: ['structures', structure.id],
        given: structure.id,
        allowed: `the camera “${plan.cameras[structure.id]?.name ?? structure.id}”`,
        subject: structure.name,
      });
    if (structure.kind !== 'building' && structure.kind !== 'barrier') continue;
    structure.openings.forEach((opening, index) => {
      const other = openings.get(opening.id);
      if (other !== undefined)
        faults.push({
          code: 'id.shared',
          path: ['structures', structure.id, 'openings', index, 'id'],
          given: opening.id,
          allowed: `the opening “${other}”`,
          subject: opening.name,
        });
      openings.set(opening.id, opening.name);
    });
    if (structure.kind !== 'building') continue;
    structure.services.forEach(({ id, name }, index) => {
      const other = services.get(id);
      if (other !== undefined)
        faults.push({
          code: 'id.shared',
          path: ['structures', structure.id, 'services', index, 'id'],
          given: id,
          allowed: `“${other}”`,
          subject: name,
        });
      services.set(id, name);
    });
  }
  return faults;
}

/** Why a camera's mount leads nowhere, if so. */
function mountNotes(plan: Plan, { id, name, mount }: PlanCamera, ground: number): readonly Fault[] {
  const placed = placeMount(mount, plan.structures, ground);
  if (placed.ok) return [];
  return placed.faults.map((fault) => ({
    ...fault,
    path: ['cameras', id, 'mount', ...fault.path],
    subject: name,
  }));
}

function situationFaults(plan: Plan): readonly Fault[] {
  const openings = new Set(
    Object.values(plan.structures).flatMap((structure) =>
      'openings' in structure ? structure.openings.map((opening) => opening.id) : [],
    ),
  );
  return Object.values(plan.situations).flatMap((situation) => {
    const path = ['situations', situation.id];
    const subject = situation.name;
    return [
      ...situation.away.flatMap((id, index) =>
        Object.hasOwn(plan.structures, id)
          ? []
          : [{ code: 'situation.noStructure', path: [...path, 'away', index], given: id, subject }],
      ),
      ...Object.keys(situation.leaves).flatMap((id) =>
        openings.has(id)
          ? []
          : [{ code: 'situation.noOpening', path: [...path, 'leaves', id], given: id, subject }],
      ),
    ];
  });
}
