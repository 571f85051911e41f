import type { KeyboardEvent } from 'react';

/**
 * Whether a key in the strip is a tool's key as in the Model: a letter alone. No number begins with one, so it counts in a
 * field that nobody has typed into, as among choices.
 */
export const isToolKey = ({ key, ctrlKey, metaKey, altKey, nativeEvent }: KeyboardEvent): boolean =>
  /^\p{L}$/u.test(key) &&
  !ctrlKey &&
  !metaKey &&
  !altKey &&
  !nativeEvent.isComposing &&
  !nativeEvent.getModifierState('AltGraph');
