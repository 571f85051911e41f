import { each, type Draft } from './draft.ts';

/** Version 2 had no groups and no pictures, and of a building neither its floors nor what is fixed to its walls. */
export const from2 = (draft: Draft): Draft => ({
  ...draft,
  version: 3,
  structures: each(draft['structures'], (structure) =>
    structure['kind'] === 'building' ? { ...structure, services: [], floors: [] } : structure,
  ),
  groups: {},
  groupOrder: [],
  pictures: {},
  pictureOrder: [],
});
