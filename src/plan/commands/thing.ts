/** Something of the plan that a person can hide or lock. */
export interface Marked {
  readonly kind: 'structure' | 'camera' | 'picture';
  readonly id: string;
}

/** Something of the plan that a person can name or delete. */
export interface Thing {
  readonly kind: Marked['kind'] | 'situation' | 'lamp' | 'patch' | 'group';
  readonly id: string;
}

/** Something of the plan that has a place of its own on the site. */
export type Movable =
  | { readonly kind: 'structure' | 'camera' | 'lamp' | 'patch' | 'picture'; readonly id: string }
  | { readonly kind: 'boundary' };

/** Something of the plan that can be taken out of it. */
export type Removable =
  | Thing
  | { readonly kind: 'boundary' }
  | { readonly kind: 'opening' | 'service'; readonly id: string; readonly on: string };
