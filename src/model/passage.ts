/** What a solid lets through: nothing, a part (mesh, railings, bare branches), or all by day (glass). */
export type Passage = 'solid' | 'screen' | 'clear';
