import type { Target } from '../coverage/target.ts';

/** "ground", "face, 1.60 m": what coverage is asked for, in a sentence. */
export function targetText({ kind, height }: Target): string {
  switch (kind) {
    case 'ground':
      return 'ground';
    case 'plate':
      return `plate, ${height.toFixed(2)} m`;
    case 'face':
      return `face, ${height.toFixed(2)} m`;
    case 'surface':
      return 'a surface';
    case 'height':
      return `${height.toFixed(2)} m`;
  }
}
