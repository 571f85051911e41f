/** Something of the plan that a person can see, and so hide or lock. */
export interface Marked {
  readonly kind: 'structure' | 'camera';
  readonly id: string;
}

/** Something of the plan that a person can name or delete. */
export interface Thing {
  readonly kind: Marked['kind'] | 'situation' | 'lamp' | 'patch';
  readonly id: string;
}
