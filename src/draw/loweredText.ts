/** Why a face counts for less than its pixels would: by the numbers of coverage/rule.ts. */
export const LOWERED: Readonly<Record<number, string>> = {
  1: ', no more since the face is seen from too steep',
  2: ', no more since the face is seen from the side',
};
