/** Letter of a tensioning group in its order, so that no group is taken for a bolt: at most four. */
export const groupLetter = (index: number): string => String.fromCharCode(65 + index);
