import type { Commands } from '../editor/commands.ts';
import { DimensionPlates } from './drawing/DimensionPlates.tsx';
import { ContextMenu } from './menu/ContextMenu.tsx';
import type { Model } from './Model.ts';
import type { Listening } from './navigate/listen.ts';
import { TouchBar } from './touch/TouchBar.tsx';

interface WorkPartsProps {
  readonly model: Model;
  readonly listening: Listening;
  readonly commands: Commands;
}

/** What lies over the Model for work on it alone: fetched once there is something to work on. */
export function WorkParts({ model, listening, commands }: WorkPartsProps) {
  return (
    <>
      <DimensionPlates model={model} />
      <TouchBar model={model} pen={listening.pointers.pen} />
      <ContextMenu model={model} commands={commands} />
    </>
  );
}
