/** Lets go of a plan, so that another tab may write it. */
export type LetGo = () => void;

/** The tabs that have a plan open: one at a time writes it. */
export interface Tabs {
  /** The right to write a plan, or null where another tab has it. `lost` is called when another tab takes it by force. */
  claim(plan: string, lost: () => void): Promise<LetGo | null>;
  /** Asks the other tab to keep its last change and let go, then takes the right; by force if it does not answer. */
  seize(plan: string, lost: () => void): Promise<LetGo>;
  /** Another tab asks for a plan: keep what is unkept, then let go. */
  asked(listener: (plan: string) => void): void;
}
