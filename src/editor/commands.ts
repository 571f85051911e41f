import type { Vec3 } from '../base/vector.ts';

/** Something that a person can have done, under a name, from wherever they are. */
export interface Command {
  /** Unique among all. */
  readonly id: string;
  readonly label: string;
  /** What a person may also call it, for the finder. */
  readonly also?: string;
  /** The keys that do the same; null where there are none. */
  readonly keys: string | null;
  /** Why it cannot be done now; null where it can. */
  off?(): string | null;
  run(): void;
}

/** What the Model does when a place is named instead of pointed at. */
export interface Places {
  /** Puts the keyboard's cursor on a place and the focus into the Model. */
  goTo(point: Vec3): void;
  /** Asks what is seen at a place, and by which camera. */
  ask(point: Vec3): void;
  /** The point of the site at a place of the window (CSS px of the page); null beside the site. */
  pointAt(x: number, y: number): Vec3 | null;
  /** The point in the middle of the view, else the middle of the site. */
  middle(): Vec3;
  /** Looks at the site from straight above. */
  fromAbove(): void;
}

/** The commands of the window. Each part adds its own while it is there. */
export interface Commands {
  add(commands: readonly Command[]): () => void;
  list(): readonly Command[];
  /** Null while no Model is there. */
  places(): Places | null;
  setPlaces(places: Places | null): void;
}

export function createCommands(): Commands {
  const parts = new Set<readonly Command[]>();
  let places: Places | null = null;
  return {
    add: (commands) => {
      parts.add(commands);
      return () => parts.delete(commands);
    },
    list: () => [...parts].flat(),
    places: () => places,
    setPlaces: (next) => {
      places = next;
    },
  };
}
