import type { ToolState } from './tools/chart.ts';

/** How far a newcomer is; `off`: nothing is shown. Each stage is over once what it makes stands. */
export type Stage = 'house' | 'roof' | 'camera' | 'seen' | 'off';

/** What the first steps go by. */
export interface Facts {
  readonly structures: number;
  readonly cameras: number;
  readonly tool: Pick<ToolState, 'name' | 'chain' | 'ghost'>;
}

/** Where the steps begin with a plan that was opened: only an empty one has them by itself. */
export const beginsAt = ({ structures, cameras }: Facts): Stage =>
  structures === 0 && cameras === 0 ? 'house' : 'off';

/** Where they go on when somebody asks for them. */
export function askedAt({ structures, cameras }: Facts): Stage {
  if (structures === 0) return 'house';
  return cameras === 0 ? 'camera' : 'seen';
}

/** The stage that follows once something has changed; the same where nothing of it is done yet. */
export function nextStage(stage: Stage, before: Facts, now: Facts): Stage {
  if (stage === 'off') return stage;
  const { name } = now.tool;
  // Undone: the house is to be drawn again.
  if (now.structures === 0 && now.cameras === 0) return 'house';
  switch (stage) {
    case 'house':
      // The plan has it a moment before the tool goes on to its height.
      if (now.structures === 0 || name.startsWith('outline ')) return stage;
      return name === 'rest asking' ? 'roof' : 'camera';
    case 'roof':
      return name === 'rest asking' ? stage : 'camera';
    case 'camera':
      return now.cameras > 0 && !name.startsWith('camera ') ? 'seen' : stage;
    case 'seen':
      return name === before.tool.name || name === 'rest' ? stage : 'off';
  }
}

/** The one sentence that helps now; null where nothing need be said. */
export function sentenceFor(stage: Stage, { tool: { name, chain, ghost } }: Facts): string | null {
  switch (stage) {
    case 'house':
      if (name === 'outline armed') return 'Pick the first corner.';
      if (name === 'outline raising') return 'Pull it up to the eaves, or type the height.';
      if (name !== 'outline chaining') return null;
      return (chain?.corners.length ?? 0) < 3
        ? 'Type a length, then an arrow for its direction. Or pick the next corner.'
        : 'Pick the first corner, or press Enter, to close.';
    case 'roof':
      return 'Give it a roof, or leave it flat. Enter goes on.';
    case 'camera':
      if (name === 'camera seeking')
        return ghost === null ? 'Point at a wall, or up under the eaves.' : 'Press to fix it.';
      if (name === 'camera aiming') return 'Now pick what it should look at.';
      return name.startsWith('rest') ? 'No camera yet. Press C, then point at a wall.' : null;
    case 'seen':
      return 'This is what it sees, and how well. Drag the cross, or type its numbers at the right.';
    case 'off':
      return null;
  }
}
