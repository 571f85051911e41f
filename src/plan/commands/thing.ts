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
