import type { Outcome } from '../../base/fault.ts';
import type { Building, Got, Service, Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { mappedList } from './mapped.ts';
import { withStructure } from './withStructure.ts';

/**
 * Moves a point on a wall, or changes what it is.
 * @param on  id of its building
 * @param how how what is new was got; left out (a drag), the mark stays
 * @returns   refused where the wall is not there or ends before it
 * @throws    RangeError where there is no such point, or a number is not finite
 */
export function setService(
  plan: Plan,
  on: string,
  id: string,
  change: Partial<Omit<Service, 'id'>>,
  how?: Got,
): Outcome<Plan> {
  const next = withStructure(plan, on, (structure) => {
    const building = withService(structure, id);
    const services = mappedList(building.services, (service) =>
      service.id === id
        ? changed(service, { ...change, ...(how === undefined ? {} : { got: how }) })
        : service,
    );
    return services === building.services ? building : { ...building, services };
  });
  return admitted(plan, next);
}

/**
 * Takes a point off its wall.
 * @throws RangeError where there is no such point
 */
export const removeService = (plan: Plan, on: string, id: string): Plan =>
  withStructure(plan, on, (structure) => {
    const building = withService(structure, id);
    return { ...building, services: building.services.filter((service) => service.id !== id) };
  });

function withService(structure: Structure, id: string): Building {
  if (structure.kind !== 'building' || !structure.services.some((service) => service.id === id))
    throw new RangeError(`${structure.id} has no point ${id} on its walls`);
  return structure;
}
