/** A group of an OBJ file. */
export interface Group {
  readonly passage: string;
  readonly corners: (readonly [number, number, number])[];
  readonly triangles: (readonly [number, number, number])[];
}

/** Reads an OBJ file by its own rules, sharing nothing with what wrote it. */
export const groupsOf = (text: string): Map<string, Group> => {
  const corners: (readonly [number, number, number])[] = [];
  const groups = new Map<string, Group>();
  let group: Group | undefined;
  for (const line of text.split('\n')) {
    const [word, ...rest] = line.split(' ');
    if (word === 'g') {
      const [id = '', passage = ''] = rest;
      if (groups.has(id)) throw new Error(`${id} twice`);
      group = { passage, corners, triangles: [] };
      groups.set(id, group);
    }
    const [a = NaN, b = NaN, c = NaN] = rest.map(Number);
    if (word === 'v') corners.push([a, b, c]);
    if (word === 'f') group?.triangles.push([a - 1, b - 1, c - 1]);
  }
  return groups;
};
