import { editions } from '../../plan/editions.ts';

/** Editions of the standard that a plan can be judged by, for a list. */
export const editionChoices: readonly { readonly value: string; readonly label: string }[] = editions.map(
  ({ key, name }) => ({ value: key, label: name }),
);
