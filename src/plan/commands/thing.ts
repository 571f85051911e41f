/** Something of the plan that a person can name, hide, lock or delete. */
export interface Thing {
  readonly kind: 'structure' | 'camera';
  readonly id: string;
}
