import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import { BoundarySheet } from './BoundarySheet.tsx';
import { OpeningSheet } from './OpeningSheet.tsx';
import { PictureSheet } from './PictureSheet.tsx';
import { ServiceSheet } from './ServiceSheet.tsx';
import { SeveralSheet } from './SeveralSheet.tsx';
import { GroundSheet } from './GroundSheet.tsx';
import type { PhotoActs } from './photoActs.ts';
import { LampSheet } from './LampSheet.tsx';
import { SituationSheet } from './SituationSheet.tsx';
import { StructureSheet } from './StructureSheet.tsx';
import { CameraSheet } from './camera/CameraSheet.tsx';

interface ThingSheetProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly photos: PhotoActs;
  choosePhotometry(lamp: string): void;
}

/** The setting sheet of what is selected; nothing where the plan no longer has it. */
export function ThingSheet({ editor, answers, photos, choosePhotometry }: ThingSheetProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, (state) => state.selected);
  const selection = useStore(editor.store, (state) => state.selection);
  if (selection.length > 1) return <SeveralSheet editor={editor} plan={plan} selection={selection} />;
  if (selected?.kind === 'ground') return <GroundSheet editor={editor} plan={plan} />;
  if (selected?.kind === 'camera') {
    const camera = plan.cameras[selected.id];
    // Another camera's sheet starts anew, so that no half-typed text goes over to it.
    if (camera)
      return <CameraSheet key={camera.id} editor={editor} answers={answers} plan={plan} camera={camera} />;
  }
  if (selected?.kind === 'structure') {
    const structure = plan.structures[selected.id];
    if (structure)
      return (
        <StructureSheet
          key={structure.id}
          editor={editor}
          answers={answers}
          structure={structure}
          square={photos.square}
        />
      );
  }
  if (selected?.kind === 'lamp') {
    const lamp = plan.lamps[selected.id];
    if (lamp)
      return <LampSheet key={lamp.id} editor={editor} lamp={lamp} choosePhotometry={choosePhotometry} />;
  }
  if (selected?.kind === 'situation') {
    const situation = plan.situations[selected.id];
    if (situation)
      return <SituationSheet key={situation.id} editor={editor} plan={plan} situation={situation} />;
  }
  if (selected?.kind === 'picture') {
    const picture = plan.pictures[selected.id];
    if (picture)
      return <PictureSheet key={picture.id} editor={editor} picture={picture} bitmap={photos.bitmap} />;
  }
  if (selected?.kind === 'opening') {
    const on = plan.structures[selected.on];
    const opening = on && 'openings' in on ? on.openings.find(({ id }) => id === selected.id) : undefined;
    if (on && opening) return <OpeningSheet key={opening.id} editor={editor} on={on} opening={opening} />;
  }
  if (selected?.kind === 'service') {
    const on = plan.structures[selected.on];
    const service = on?.kind === 'building' ? on.services.find(({ id }) => id === selected.id) : undefined;
    if (on?.kind === 'building' && service)
      return <ServiceSheet key={service.id} editor={editor} on={on} service={service} />;
  }
  if (selected?.kind === 'boundary' && plan.boundary)
    return <BoundarySheet editor={editor} boundary={plan.boundary} />;
  return null;
}
