import type { Building, Opening, Service, ServiceKind } from '../model/structure.ts';
import { addService } from '../plan/commands/addService.ts';
import { setFloors } from '../plan/commands/setFloors.ts';
import { setOpening } from '../plan/commands/setOpening.ts';
import { setPicture } from '../plan/commands/addPicture.ts';
import { setService } from '../plan/commands/setService.ts';
import { deleteThings } from '../plan/commands/deleteThings.ts';
import type { Picture } from '../plan/plan.ts';
import type { Editor, Selected } from './editor.ts';
import { tryStep } from './settings/changeSetting.ts';
import { span } from '../model/segment.ts';

/** Usual heights above the floor, m: common practice, no source. */
const HEIGHTS: Readonly<Record<ServiceKind, number>> = {
  socket: 0.3,
  switch: 1.1,
  light: 2.2,
  tap: 0.6,
  meter: 1.4,
  flue: 1.8,
};

/** Marks something on the first wall of a building, in its middle, and selects it to be put in its place. */
export function addServiceTo(editor: Editor, building: Building, kind: ServiceKind): void {
  const [a, b] = building.outline;
  const added = addService(editor.store.getState().plan, building.id, {
    kind,
    face: 0,
    along: a && b ? span(a, b) / 2 : 0,
    height: HEIGHTS[kind],
    inside: kind === 'socket' || kind === 'switch',
    got: 'guessed',
  });
  if (!added.ok) return editor.say(`Nothing was put on ${building.name}.`, added.faults);
  editor.run(`Put a ${kind} on ${building.name}`, () => added.value.plan);
  editor.select({ kind: 'service', id: added.value.id, on: building.id });
}

/** Adds a floor above the highest. */
export const addFloor = (editor: Editor, { id, name, floors, height }: Building): void => {
  const top = floors.at(-1);
  const level = top ? top.level + top.ceiling + FLOOR_THICKNESS : 0;
  const next = { name: FLOOR_NAMES[floors.length] ?? `Floor ${floors.length}`, level, ceiling: ROOM };
  tryStep(editor, `Floor of ${name}`, (plan) =>
    setFloors(plan, id, [
      ...floors,
      floors.length === 0 ? { ...next, ceiling: Math.min(ROOM, height) } : next,
    ]),
  );
};

export const removeFloor = (editor: Editor, { id, name, floors }: Building, index: number): void =>
  tryStep(editor, `Floor of ${name}`, (plan) =>
    setFloors(
      plan,
      id,
      floors.filter((_, k) => k !== index),
    ),
  );

/** A usual room and the floor above it, m: common practice, no source. */
const ROOM = 2.4;
const FLOOR_THICKNESS = 0.3;
const FLOOR_NAMES = ['Ground floor', 'First floor', 'Second floor', 'Third floor'];

export const changeOpening = (editor: Editor, on: string, opening: Opening, change: Partial<Opening>): void =>
  tryStep(editor, `Change ${opening.name}`, (plan) => setOpening(plan, on, opening.id, change));

export const changeService = (editor: Editor, on: string, service: Service, change: Partial<Service>): void =>
  tryStep(editor, `Change ${service.name}`, (plan) => setService(plan, on, service.id, change));

export const changePicture = (
  editor: Editor,
  picture: Picture,
  change: Partial<Omit<Picture, 'id'>>,
  merge?: string,
): void => tryStep(editor, `Change ${picture.name}`, (plan) => setPicture(plan, picture.id, change), merge);

/** Takes a part or a picture out. */
export function removePart(
  editor: Editor,
  thing: Extract<Selected, { kind: 'opening' | 'service' | 'picture' }>,
  name: string,
): void {
  editor.run(`Delete ${name}`, (plan) => deleteThings(plan, [thing], {}));
  editor.say(`${name} is deleted. Undo brings it back.`);
}
