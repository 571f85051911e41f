/** Corners that a face can have. */
export const MOST_CORNERS = 4;
