import { cameraSchema } from '../../plan/cameraSchema.ts';
import { z } from '../../plan/zod.ts';
import { isVariantOf, MOST_VARIANTS, type TrialStore } from './trial.ts';

/** Variants go with the tab: they are no part of the plan, and a reload brings them back. */
const KEY = 'soffit trial';

const kept = z.strictObject({
  plan: z.string(),
  of: z.string().nullable(),
  variants: z.record(z.string(), z.array(cameraSchema).max(MOST_VARIANTS)),
});

/** Takes up the variants that this tab kept of this plan; what cannot be read is left. */
export function takeUpTrial(trial: TrialStore, storage: Storage): void {
  const { plan, edits } = trial.getState();
  try {
    const read = kept.safeParse(JSON.parse(storage.getItem(KEY) ?? 'null'));
    if (!read.success || read.data.plan !== plan) return;
    const variants = Object.fromEntries(
      Object.entries(read.data.variants).map(([of, all]) => [
        of,
        all.filter(({ id }) => isVariantOf(of, id)),
      ]),
    );
    trial.setState({ of: read.data.of, variants, edits: edits + 1 });
  } catch {
    // No storage, or not ours: the trial begins empty.
  }
}

/** Keeps the variants in the tab as they change. Returns how to stop. */
export const keepTrial = (trial: TrialStore, storage: Storage): (() => void) =>
  trial.subscribe(({ plan, of, variants }, before) => {
    if (variants === before.variants && of === before.of && plan === before.plan) return;
    try {
      storage.setItem(KEY, JSON.stringify({ plan, of, variants }));
    } catch {
      // A full or forbidden storage costs the reload, not the trial.
    }
  });
