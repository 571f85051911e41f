import type { Fault } from '../../base/fault.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import { solidsOf } from '../../model/solids.ts';
import type { Building, Opening, Structure } from '../../model/structure.ts';
import { serviceNotes } from '../belonging.ts';
import type { Plan } from '../plan.ts';
import { cameraFault, openingFault, serviceFault, stopFault } from './editFault.ts';

/** What was fixed to the structures that differ and fitted, or is new on them, and does not fit now. */
export function misfits(before: Plan, after: Plan): readonly Fault[] {
  return Object.values(after.structures).flatMap((structure) => {
    const former = Object.hasOwn(before.structures, structure.id)
      ? before.structures[structure.id]
      : undefined;
    if (structure === former) return [];
    return [
      ...openingMisfits(former, structure),
      ...(structure.kind === 'building' ? serviceMisfits(former, structure) : []),
      ...cameraMisfits(before, after, structure.id),
    ];
  });
}

function openingMisfits(before: Structure | undefined, after: Structure): readonly Fault[] {
  const wrong = wrongOpenings(after);
  if (wrong.length === 0) return [];
  const former = before && 'openings' in before ? before.openings : [];
  const wrongBefore = new Set(before ? wrongOpenings(before).map(({ opening }) => opening.id) : []);
  return wrong.flatMap(({ opening, fault }) => {
    if (wrongBefore.has(opening.id)) return [];
    return [former.includes(opening) ? stopFault(fault, opening) : openingFault(fault)];
  });
}

/** Openings that are left out of a structure, and why. */
function wrongOpenings(structure: Structure): { readonly opening: Opening; readonly fault: Fault }[] {
  if (!('openings' in structure) || structure.openings.length === 0) return [];
  return solidsOf(structure).faults.flatMap((fault) => {
    const [list, index] = fault.path;
    const opening = list === 'openings' && typeof index === 'number' ? structure.openings[index] : undefined;
    // Set back too far it stands as deep as its wall allows: a note.
    return opening && fault.code !== 'opening.set-back' ? [{ opening, fault }] : [];
  });
}

function serviceMisfits(before: Structure | undefined, after: Building): readonly Fault[] {
  const former = before?.kind === 'building' ? before : null;
  const wrongBefore = new Set(former ? serviceNotes(former).map((note) => idAt(former, note)) : []);
  return serviceNotes(after)
    .filter((note) => !wrongBefore.has(idAt(after, note)))
    .map(serviceFault);
}

const idAt = ({ services }: Building, { path }: Fault): string | undefined => services[Number(path[3])]?.id;

function cameraMisfits(before: Plan, after: Plan, host: string): readonly Fault[] {
  const faultsIn = (plan: Plan, id: string): readonly Fault[] => {
    const mount = plan.cameras[id]?.mount;
    const placed = mount && placeMount(mount, plan.structures, groundHeight(plan.ground));
    return !placed || placed.ok ? [] : placed.faults;
  };
  return Object.values(after.cameras).flatMap(({ id, name, mount }) => {
    if (!('host' in mount) || mount.host !== host || !Object.hasOwn(before.cameras, id)) return [];
    const faults = faultsIn(after, id);
    return faults.length > 0 && faultsIn(before, id).length === 0
      ? faults.map((fault) => cameraFault(fault, name))
      : [];
  });
}
